import { join } from 'node:path';
import type { Routing } from '../../../board/route/routing.ts';
import type { Keep } from '../../../model/keep.ts';
import { type RoutingInput, routingStep } from '../../../plan/board/board-steps.ts';
import { planJob } from '../../../plan/plan-job.ts';
import { readContent } from '../../../read/read-content.ts';
import { textsBelow } from '../../effects.ts';

/** A board that stays as it is: what its wires are laid by, and how they are laid. */
export interface FixedBoard extends RoutingInput {
  readonly job: string;
  readonly routing: Routing;
}

/** The boards of the fixed jobs, whatever becomes of the demo. They stand in a checkout only: elsewhere there are none. */
export async function fixedBoards(root: string): Promise<readonly FixedBoard[]> {
  const folder = join(root, 'tests', 'boards');
  const { jobs } = readContent(await textsBelow(folder, join(folder, 'content')));
  return jobs.flatMap((job) => {
    const steps: unknown[] = [];
    const keep: Keep = (step, input) => {
      const answer = step.compute(input, keep);
      if (step.id === routingStep.id) steps.push({ ...input, job: job.id, routing: answer });
      return answer;
    };
    planJob(job, keep);
    return steps.findLast(isLaidForGood) ?? [];
  });
}

function isLaidForGood(step: unknown): step is FixedBoard {
  return typeof step === 'object' && step !== null && 'isDraft' in step && step.isDraft === false;
}
