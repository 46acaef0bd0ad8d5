import { computeAnew } from '../../../lib/model/keep.ts';
import { onceEach } from '../../../lib/plan/once-each.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { settleJob } from '../../../lib/plan/settle-job.ts';
import type { SettledJob } from '../../../lib/plan/settle-sizes.ts';
import { planRuns } from '../../../lib/plan/wiring/runs/runs.ts';
import { planCables, planWires } from '../../../lib/plan/wiring/wires.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { jobOf } from '../plan-small-shop.ts';

/** The small job with its sizes settled, once for all that ask of it. */
export const small = onceEach(
  (...changes: readonly Change[]) => settleJob(jobOf(smallShop(...changes)), new PlanBook(), computeAnew),
  (...changes) => JSON.stringify(changes),
);

/** The wire list of a job whose sizes stand, its runs and cables, and what was noticed. */
export function wiring({ job, devices, settled: { all, sizing } }: SettledJob) {
  const book = new PlanBook();
  const runs = planRuns(job, all, book);
  const wires = planWires({ job, devices, sized: all, lengths: sizing.lengths, runs }, book);
  return { job, runs, wires, cables: planCables(job, wires), traces: book.traces(), placed: book.remarks() };
}

/** What a rule noticed of it. */
export const told = (found: ReturnType<typeof wiring>, rule: string) =>
  found.placed.filter(({ remark }) => remark.rule === rule);
