import { nothingReleased } from '../../model/content/built.ts';
import type { JobFile } from '../../model/content/job.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import type { Finding } from '../../model/finding.ts';
import { type BuildPlan, isStopped } from '../../model/plan/index.ts';
import type { Problem } from '../../model/problem.ts';
import { planChanges } from '../../plan/built/changes-between-plans.ts';
import type { PublishedJob, ShopSite } from '../../publish/site/shop-site.ts';
import { standingJob } from '../../read/job-standing.ts';
import {
  baseName,
  byPlace,
  type Content,
  contentFiles,
  type PromisedJobs,
  readContent,
} from '../../read/read-content.ts';
import { remedyFor } from '../../read/report.ts';
import { strayFiles } from '../../read/stray-files.ts';
import type { Crew } from '../crew/crew.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, statusOf } from '../exit-status.ts';
import { jobFilesIn } from '../kept/job-files.ts';
import { type JobFiles, type JobHead, shopSteps } from '../kept/shop-steps.ts';
import { type FrozenPlan, frozenPlans, releasedJobs } from './frozen-plans.ts';
import { promisedOf, promisedOver } from './promised-over.ts';
import type { ShopPhotos } from './shop-photos.ts';
import { type ShopPromises, shopPromises } from './shop-promises.ts';

/** A job with the plan that it computes today, or the frozen one where its revision is released. */
export interface LoadedJob {
  readonly job: JobHead;
  /** What its sheets show: frozen for a released revision, today's otherwise. */
  readonly plan: BuildPlan;
  readonly released: boolean;
  /** Where today's plan differs from the frozen one; none where today's was not asked for. */
  readonly changes: readonly string[];
  /** Today's plan of a released revision, only where it was asked to be kept. */
  readonly today?: BuildPlan;
}

/** A job whose planning, or whose drawing, broke down: a bug of ours, or something outside that is missing. */
export interface FailedJob {
  readonly id: string;
  /** What failed, in the words of a message. */
  readonly failure: string;
}

/** A shop, read, planned and judged. */
export interface LoadedShop {
  /** The files that it was read from. */
  readonly files: readonly SourceFile[];
  readonly problems: readonly Problem[];
  readonly frozen: readonly FrozenPlan[];
  /** What its released jobs that are not built in yet take from the shelf. */
  readonly promises: ShopPromises;
  /** What of that the shelf does not have: findings of the shop, whatever its jobs take. */
  readonly promisedOver: readonly Finding[];
  readonly jobs: readonly LoadedJob[];
  /** Jobs that could be read, those that were not asked for too. */
  readonly readJobs: readonly string[];
  readonly unreadJobs: readonly string[];
  readonly failed: readonly FailedJob[];
  /** All that the shop wrote, read anew: what is kept does not hold its private values. */
  readonly content: () => Content;
}

export interface LoadWish {
  /** Jobs that are planned. Default: all. */
  readonly only?: (job: string) => boolean;
  /** Whether released revisions are planned too, to tell where today's plan would differ. */
  readonly compares: boolean;
  /** Whether today's plan of a released revision is kept, for who looks at more than where it differs. */
  readonly keepsToday?: boolean;
}

/**
 * Reads, plans and judges a shop:
 *
 *   files ─read─▶ Job ─plan─▶ BuildPlan ─judge─▶ findings
 *
 * Problems are collected, never thrown; what could be read is planned all the same, each job by itself. What was read
 * and planned before, from the same files by the same code, is taken from what is kept.
 */
export async function loadShop(
  effects: Effects,
  crew: Crew,
  { only = () => true, compares, keepsToday = false }: LoadWish,
): Promise<LoadedShop> {
  const files = await effects.readContent();
  const { frozen, problems: frozenProblems } = frozenPlans(files, crew.keep);
  const released = releasedJobs(frozen);
  const { jobs: jobFiles, ...sorted } = contentFiles(files);
  const steps = shopSteps(crew.read);
  const standIns = files.filter(({ path }) => standingJob(path) !== null);
  const promises = shopPromises(frozen, [...standIns, ...jobFiles], crew.keep);
  const read = jobFiles.map((job) => {
    const name = baseName(job.path);
    const promised = promises.before(name, compares && only(name));
    const own = jobFilesIn(sorted, job, { released: released[name] ?? nothingReleased, promised }, crew.keep);
    return { name, own, ...crew.keep(steps.job, own) };
  });
  const wanted = read.flatMap(({ value: job, own }) => (job && only(job.id) ? [{ job, own }] : []));
  const loaded = await Promise.all(
    wanted.map(({ job, own }) => loadJob(effects, crew, job, own, { frozen, compares, keepsToday })),
  );
  const problems = [
    ...crew.keep(steps.problems, sorted),
    ...strayFiles(files),
    ...read.flatMap((one) => one.problems),
  ].toSorted(byPlace);
  return {
    files,
    problems: [...problems, ...frozenProblems],
    frozen,
    promises,
    promisedOver: promisedOver({ files: sorted.shop, promises: promises.all }, crew.keep),
    jobs: loaded.filter((one) => 'plan' in one),
    readJobs: read.flatMap(({ value }) => value?.id ?? []),
    unreadJobs: read.flatMap(({ name, value }) => (value ? [] : [name])),
    failed: loaded.filter((one) => 'failure' in one),
    content: () => readContent(files, released, crew.keep, promisedFor(read)),
  };
}

interface Released {
  readonly frozen: readonly FrozenPlan[];
  readonly compares: boolean;
  readonly keepsToday: boolean;
}

async function loadJob(
  effects: Effects,
  crew: Crew,
  job: JobHead,
  files: JobFiles,
  { frozen, compares, keepsToday }: Released,
): Promise<LoadedJob | FailedJob> {
  const own = frozen.find((one) => one.job === job.id && one.revision === job.revision);
  if (own && !compares) return { job, plan: withStatus(own.plan, job), released: true, changes: [] };
  if (effects.watched) effects.tell(`planning ${job.id}`);
  const done = await crew.task('plan', files);
  if (done.state === 'failed') return { id: job.id, failure: done.failure };
  const today = done.value;
  // A job that could be read has a plan.
  if (today === null) return { id: job.id, failure: 'it was read, but not planned' };
  if (!own) return { job, plan: today, released: false, changes: [] };
  return {
    job,
    plan: withStatus(own.plan, job),
    released: true,
    changes: planChanges(own.plan, today),
    ...(keepsToday && { today }),
  };
}

/** What each job of a shop was read with. */
function promisedFor(read: readonly { readonly name: string; readonly own: JobFiles }[]): PromisedJobs {
  return Object.fromEntries(read.map(({ name, own }) => [name, own.promised]));
}

/** What is released stays; only whether it is installed or superseded by now comes from the job file. */
function withStatus(plan: BuildPlan, { status }: JobHead): BuildPlan {
  return status === 'draft' ? plan : { ...plan, job: { ...plan.job, status } };
}

/** Why a job that was asked for is not among the planned ones. */
export function missingJob({ readJobs, unreadJobs, failed }: LoadedShop, id: string): string {
  const own = failed.find((one) => one.id === id);
  if (own) return `${id} could not be made. ${own.failure}`;
  if (unreadJobs.includes(id))
    return `${id} could not be read: mend the errors of its file, of its vehicle and of its parts first`;
  return `there is no job "${id}"; ${remedyFor(id, [...readJobs, ...unreadJobs])}`;
}

/** The status of a run that lacks a job that was asked for. */
export function missingStatus({ failed }: LoadedShop): ExitStatus {
  return statusOf({ problems: true, stopped: false, failed: failed.length > 0 });
}

/** True where a finding stops any job whose revision is not released yet. */
export function anyStopped({ jobs }: LoadedShop): boolean {
  return jobs.some(({ plan }) => isStopped(plan));
}

/** True where the job file itself says that the revision is superseded. */
function isOut(job: Pick<JobHead, 'status' | 'revision'>, revision: string): boolean {
  return job.status === 'superseded' && job.revision === revision;
}

/** A frozen plan that a later revision stands in the place of: its sheets say so, so that nobody builds from them. */
export function superseded(plan: BuildPlan): BuildPlan {
  return { ...plan, job: { ...plan.job, status: 'superseded' } };
}

/** True where a job or a guide may have pictures: their files are none of the texts that a shop is read from. */
export function hasPhotos(files: readonly SourceFile[]): boolean {
  return files.some(
    ({ path, text }) =>
      (/^content\/jobs\/[^/]+\.yaml$/.test(path) && text.includes('photos')) ||
      (/^content\/guides\/[^/]+\.md$/.test(path) && text.includes('![')),
  );
}

/**
 * The photos of the jobs of a shop and the pictures of its guides, made ready; null where none may have any.
 *
 * @param content All that the shop wrote. Default: read anew.
 */
export async function photosOf(
  effects: Effects,
  shop: LoadedShop,
  content: () => Content = shop.content,
): Promise<ShopPhotos | null> {
  if (!hasPhotos(shop.files)) return null;
  const loaded = new Set(shop.jobs.map(({ job }) => job.id));
  const { shopPhotos } = await import('./shop-photos.ts');
  const { jobs, guides } = content();
  return shopPhotos(effects, { jobs: jobs.filter(({ id }) => loaded.has(id)), guides, files: shop.files });
}

/** What the site is made from with the photos of its jobs, and what is wrong with photos; null as for `siteOf`. */
export async function siteWithPhotos(
  effects: Effects,
  shop: LoadedShop,
): Promise<{ readonly site: ShopSite; readonly problems: readonly Problem[] } | null> {
  const content = shop.content();
  const site = siteOf(shop, content);
  if (!site) return null;
  const photos = await photosOf(effects, shop, () => content);
  if (!photos) return { site, problems: [] };
  const { ofJob, ofGuides, files, problems } = photos;
  return {
    site: {
      ...site,
      guidePictures: ofGuides,
      photos: files,
      jobs: site.jobs.map((job) => ({ ...job, photos: ofJob.get(job.plan.job.id) ?? [] })),
    },
    problems,
  };
}

/**
 * What the site is made from, without photos; null where the shop file itself can't be read.
 *
 * @param content All that the shop wrote. Default: read anew.
 */
export function siteOf(
  { jobs, frozen, promises, content: readAnew }: LoadedShop,
  content: Content = readAnew(),
): ShopSite | null {
  const { shop, parts, vehicles, guides, jobs: read } = content;
  if (!shop) return null;
  const files = new Map(read.map(({ id, file }) => [id, file]));
  return {
    shop,
    promised: promisedOf(shop, promises.all),
    parts,
    vehicles,
    guides,
    jobs: jobs.map(({ job, plan }): PublishedJob => {
      const revisions = frozen
        .filter((one) => one.job === job.id)
        .map(({ revision, plan: own }, index, all) => ({
          revision,
          plan: index < all.length - 1 || isOut(job, revision) ? superseded(own) : own,
        }));
      const file = files.get(job.id);
      return {
        plan,
        customer: file?.customer ?? {},
        handOver: file?.['hand-over'] ?? null,
        worked: file?.hours ?? [],
        serials: serialsOf(file),
        revisions,
      };
    }),
  };
}

/** The serial numbers that a job writes, by device. */
function serialsOf(file: JobFile | undefined): PublishedJob['serials'] {
  return Object.fromEntries(
    Object.entries(file?.devices ?? {}).flatMap(([id, { 'serial-number': serial }]) =>
      serial === undefined ? [] : [[id, serial]],
    ),
  );
}
