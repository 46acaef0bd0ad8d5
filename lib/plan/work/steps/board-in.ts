import type { PlanStep } from '../../../model/plan/index.ts';
import { listed } from '../../../model/printed/listed.ts';
import { minutesFor, type Step, step, type Work } from '../work.ts';
import { torquesText } from './torque-words.ts';

type Dependency = PlanStep['waitsFor'][number];

/** What all work in the vehicle waits for. */
export const safe: Dependency = {
  step: 'battery-off',
  why: 'no trim comes off and no wire is laid with the battery on',
};

/** What must be done in the vehicle before a board goes in. */
interface BeforeBoard {
  readonly runs: readonly string[];
  /** The steps that make points in the vehicle. */
  readonly points: readonly string[];
}

/** What must still come to hand with boards in: `reach for jack and spare-wheel`; empty where nothing is told. */
export function reachedText({ reachable }: Pick<Work, 'reachable'>, ...boards: readonly string[]): string {
  const things = new Set(reachable.flatMap((one) => (boards.includes(one.board) ? one.things : [])));
  return things.size === 0 ? '' : `reach for ${listed([...things])}`;
}

/** The board goes onto its points once it is tested, its points are made and the runs lie. */
export function boardIn(work: Work, board: string, tested: string, { runs, points }: BeforeBoard): Step {
  const reached = reachedText(work, board);
  return step(
    `board-in-${board}`,
    [
      { step: tested, why: 'a fault on the bench costs minutes, in the vehicle hours' },
      ...runs.map((run) => ({ step: run, why: 'the ends of the run must lie ready at the board' })),
      ...points
        .filter((id) => id === `points-${board}`)
        .map((id) => ({ step: id, why: 'a board hides its points' })),
      ...(runs.length === 0 ? [safe] : []),
    ],
    {
      layer: 'board',
      place: 'vehicle',
      by: 'both',
      text: `Fix ${board} on its sound points, the wires of the runs led to its edges${torquesText(work, board)}${reached === '' ? '' : `; then ${reached}: it must still come out past the board`}`,
      tools: ['torque wrench'],
      minutes: minutesFor(work, 'board-in'),
      acts: [`fix:${board}`],
      proof: 'Every fixing is torqued; the board does not move by hand; no wire is pinched',
    },
  );
}
