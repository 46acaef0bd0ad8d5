import type { ReadJob } from '../../lib/model/content/resolved-job.ts';
import type { Keep } from '../../lib/model/keep.ts';
import { planJob } from '../../lib/plan/plan-job.ts';
import type { Planned } from '../../lib/plan/planned.ts';
import { testCrew } from '../shops/test-crew.ts';

let keep: Keep | null = null;

/**
 * Plans a job with the steps that take long (places, ways of wires, stiffness) kept between tests: many plan the same
 * board over and over, and ask something else of it. What is kept may never change an answer, which tests of its own hold.
 */
export function planKept(job: ReadJob): Planned {
  keep ??= testCrew().keep;
  return planJob(job, keep);
}
