import type { Step } from '../../model/keep.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { judgedPlan } from '../shop/judged-plan.ts';
import type { JobFiles, JobReader } from './shop-steps.ts';

/** The judged plan of a job; null where it can't be read in full. */
export function planStep(readJob: JobReader): Step<JobFiles, BuildPlan | null> {
  return {
    id: 'plan',
    compute: (files, keep) => {
      const { value: job } = readJob(files);
      return job && judgedPlan(job, keep);
    },
  };
}
