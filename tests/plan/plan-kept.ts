import type { Job } from '../../lib/model/content/resolved-job.ts';
import type { Keep } from '../../lib/model/keep.ts';
import { type Planned, planJob } from '../../lib/plan/plan-job.ts';
import { testCrew } from '../shops/test-crew.ts';

let keep: Keep | null = null;

/**
 * Plans a job with the steps that take long (places, ways of wires, stiffness) kept between tests: many plan the same
 * board over and over, and ask something else of it. What is kept may never change an answer, which tests of its own hold.
 */
export function planKept(job: Job): Planned {
  keep ??= testCrew().keep;
  return planJob(job, keep);
}
