import type { ReadJob } from '../../lib/model/content/resolved-job.ts';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import type { JoinedRemark } from '../../lib/model/remark.ts';
import type { ReleasedJobs } from '../../lib/read/read-content.ts';
import { type Change, smallShop } from '../read/small-shop.ts';
import { jobsIn } from '../shops/shop-once.ts';
import { planKept } from './plan-kept.ts';

/** The job of files that must read without a problem. */
export function jobOf(files: readonly SourceFile[], released: ReleasedJobs = {}): ReadJob {
  const { jobs, problems } = jobsIn(files, released);
  const [job] = jobs;
  if (!job) throw new Error(problems.map(({ message }) => message).join('\n'));
  return job;
}

/** The plan of the small shop's job, with changes made to its files, and what planning noticed. */
export function smallPlan(...changes: readonly Change[]): {
  readonly plan: BuildPlan;
  readonly remarks: readonly JoinedRemark[];
} {
  const { plan, remarks } = planKept(jobOf(smallShop(...changes)));
  return { plan, remarks: remarks.map(({ remark }) => remark) };
}

/** The entry of a list with an id. */
export function byId<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const found = list.find((one) => one.id === id);
  if (!found) throw new Error(`There is no ${id}.`);
  return found;
}
