import type { Keeper } from '../../kept/keeper.ts';
import type { Job, ReadJob } from '../../model/content/resolved-job.ts';
import type { LaterStep } from '../../model/keep.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { computedFrom, type Planned, type PlannedBody, plannedBody, withHead } from '../../plan/planned.ts';
import { judge } from '../../rules/index.ts';
import type { JobFiles, ShopReader } from './shop-steps.ts';

type Kept = Pick<Keeper, 'keep' | 'keepLater'>;

/** The judged plan of a job; null where it can't be read in full. */
export function planStep(read: ShopReader, kept: Kept): LaterStep<JobFiles, BuildPlan | null> {
  return {
    id: 'plan',
    compute: async (files) => {
      const { value: job } = read.job(files, kept.keep);
      if (!job) return null;
      const { plan, remarks } = await planned(job, kept);
      return { ...plan, findings: judge(job, plan, remarks) };
    },
  };
}

/** The plan of a job, not judged yet. What computes it is loaded only where its result is not kept. */
async function planned(job: ReadJob, { keep, keepLater }: Kept): Promise<Planned> {
  const body: LaterStep<Job, PlannedBody> = {
    ...plannedBody,
    compute: async (given) => (await import('../../plan/plan-job.ts')).planBody(given, keep),
  };
  return withHead(job, await keepLater(body, computedFrom(job)));
}
