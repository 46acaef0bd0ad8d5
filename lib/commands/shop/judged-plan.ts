import type { ReadJob } from '../../model/content/resolved-job.ts';
import { computeAnew, type Keep } from '../../model/keep.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { planJob } from '../../plan/plan-job.ts';
import { judge } from '../../rules/index.ts';

/** The plan of a job with all that the rules find in it. */
export function judgedPlan(job: ReadJob, keep: Keep = computeAnew): BuildPlan {
  const { plan, remarks } = planJob(job, keep);
  return { ...plan, findings: judge(job, plan, remarks) };
}
