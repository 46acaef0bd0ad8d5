import type { Job } from '../model/content/resolved-job.ts';
import type { SourceFile } from '../model/content/source-file.ts';
import { type BuildPlan, isStopped } from '../model/plan/index.ts';
import type { Problem } from '../model/problem.ts';
import type { PublishedJob, ShopSite } from '../publish/site/shop-site.ts';
import { type Content, readContent } from '../read/read-content.ts';
import { remedyFor } from '../read/report.ts';
import type { Effects } from './effects.ts';
import { type FrozenPlan, frozenPlans, releasedLabels } from './frozen-plans.ts';
import { judgedPlan } from './judged-plan.ts';
import { planChanges } from './plan-changes.ts';

/** A job with the plan that it computes today, and the frozen one where its revision is released. */
export interface LoadedJob {
  readonly job: Job;
  /** As computed today, judged. */
  readonly today: BuildPlan;
  /** What its sheets show: frozen for a released revision, today's otherwise. */
  readonly plan: BuildPlan;
  readonly released: boolean;
  /** Where today's plan differs from the frozen one. */
  readonly changes: readonly string[];
}

/** A shop, read, planned and judged. */
export interface LoadedShop {
  /** The files that it was read from. */
  readonly files: readonly SourceFile[];
  readonly content: Content;
  readonly problems: readonly Problem[];
  readonly frozen: readonly FrozenPlan[];
  readonly jobs: readonly LoadedJob[];
}

/** Plans and judges a job of the shop that these files tell of. */
export type TodayOf = (job: Job, files: readonly SourceFile[]) => BuildPlan;

/**
 * Reads, plans and judges a shop:
 *
 *   files ─read─▶ Job ─plan─▶ BuildPlan ─judge─▶ findings
 *
 * Problems are collected, never thrown; what could be read is planned all the same.
 */
export async function loadShop(
  effects: Effects,
  only: (job: string) => boolean = () => true,
  todayOf: TodayOf = (job) => judgedPlan(job),
): Promise<LoadedShop> {
  const files = await effects.readContent();
  const { frozen, problems } = frozenPlans(files);
  const content = readContent(files, releasedLabels(frozen));
  const jobs = content.jobs
    .filter(({ id }) => only(id))
    .map((job) => {
      if (effects.watched) effects.tell(`planning ${job.id}`);
      return loadJob(job, frozen, todayOf(job, files));
    });
  return { files, content, problems: [...content.problems, ...problems], frozen, jobs };
}

function loadJob(job: Job, frozen: readonly FrozenPlan[], today: BuildPlan): LoadedJob {
  const own = frozen.find((one) => one.job === job.id && one.revision === job.file.revision);
  if (!own) return { job, today, plan: today, released: false, changes: [] };
  return {
    job,
    today,
    plan: withStatus(own.plan, job),
    released: true,
    changes: planChanges(own.plan, today),
  };
}

/** What is released stays; only whether it is installed or superseded by now comes from the job file. */
function withStatus(plan: BuildPlan, { file: { status } }: Job): BuildPlan {
  return status === 'draft' ? plan : { ...plan, job: { ...plan.job, status } };
}

/** Why a job that was asked for is not among the planned ones. */
export function missingJob({ content }: LoadedShop, id: string): string {
  if (content.unreadJobs.includes(id))
    return `${id} could not be read: mend the errors of its file and of its vehicle first`;
  const known = [...content.jobs.map((job) => job.id), ...content.unreadJobs];
  return `there is no job "${id}"; ${remedyFor(id, known)}`;
}

/** True where a finding stops any job whose revision is not released yet. */
export function anyStopped({ jobs }: LoadedShop): boolean {
  return jobs.some(({ plan }) => isStopped(plan));
}

/** A frozen plan that a later revision stands in the place of: its sheets say so, so that nobody builds from them. */
function superseded(plan: BuildPlan): BuildPlan {
  return { ...plan, job: { ...plan.job, status: 'superseded' } };
}

/** What the site is made from; null where the shop file itself can't be read. */
export function siteOf({ content, jobs, frozen }: LoadedShop): ShopSite | null {
  if (!content.shop) return null;
  return {
    shop: content.shop,
    parts: content.parts,
    vehicles: content.vehicles,
    guides: content.guides,
    jobs: jobs.map(({ job, plan, changes }): PublishedJob => {
      const revisions = frozen
        .filter((one) => one.job === job.id)
        .map(({ revision, plan: own }, index, all) => ({
          revision,
          plan: index < all.length - 1 ? superseded(own) : own,
        }));
      return { plan, customer: job.file.customer, revisions, changes };
    }),
  };
}
