import { join } from 'node:path';
import type { Audience } from '../model/audience.ts';
import type { SourceFile } from '../model/content/source-file.ts';
import type { LaterStep } from '../model/keep.ts';
import { problemText } from '../model/problem.ts';
import { once } from '../plan/once-each.ts';
import { type BuiltSite, buildSites, lookDigest, siteStands } from '../publish/site/build-site.ts';
import type { ShopSite } from '../publish/site/shop-site.ts';
import type { Crew } from './crew/crew.ts';
import { withCrew } from './crew/with-crew.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus, statusOf } from './exit-status.ts';
import {
  anyStopped,
  type FailedJob,
  hasPhotos,
  type LoadedShop,
  loadShop,
  missingJob,
  missingStatus,
  siteWithPhotos,
} from './shop/load-shop.ts';
import { loneSiteOf, shopOfJob } from './shop/lone-shop.ts';
import { failedText, standingText, tellFailed, tellNoPacket, tellProblems } from './told/report.ts';

export interface BuildChoices {
  readonly audience: Audience;
  /** Builds what can be built although the input has errors. */
  readonly keepGoing: boolean;
  /** The job that the site is made for alone; null for the site of the shop. */
  readonly job: string | null;
}

/** `rackleaf build`: the site of the shop, or of one job alone. With errors in the input the last good site stays as it is. */
export function build(effects: Effects, choices: BuildChoices): Promise<ExitStatus> {
  return withCrew(effects, (crew) => buildWith(crew, effects, choices));
}

/** Builds with a crew. */
export async function buildWith(crew: Crew, effects: Effects, choices: BuildChoices): Promise<ExitStatus> {
  const files = await effects.readContent();
  const { root } = effects;
  const { audience, job } = choices;
  const wish: SiteWish = { root, files, audience, job, look: await lookDigest() };
  const known = await standing(effects, wish, crew);
  const built = known ?? (await buildAnew({ ...effects, readContent: async () => files }, choices, crew));
  if ('refused' in built) return built.refused;
  if (!known && built.isWhole) crew.put(siteStep, wish, built);
  for (const line of built.told) effects.tell(line);
  return built.status;
}

/** All that a site follows from, beside the code. */
interface SiteWish {
  /** The folder of the shop, which is told: a shop may be moved with all that is kept in it. */
  readonly root: string;
  readonly files: readonly SourceFile[];
  readonly audience: Audience;
  readonly job: string | null;
  /** Digest of layouts and assets. */
  readonly look: string;
}

/** A site that was built, and what was told of it. */
interface Built {
  /** Digest of what was built; null of packets, which are several. */
  readonly digest: string | null;
  readonly told: readonly string[];
  readonly status: ExitStatus;
  /** False where anything was left out. */
  readonly isWhole: boolean;
}

/** The building of a site; it is only ever asked whether its result is kept. */
const siteStep: Pick<LaterStep<SiteWish, Built>, 'id'> = { id: 'site' };

/** What was built before from the same, where it stands as it was built; null where it has to be built. */
async function standing(effects: Effects, wish: SiteWish, crew: Crew): Promise<Built | null> {
  if (wish.audience === 'customer' || hasPhotos(wish.files)) return null;
  const known = crew.known<SiteWish, Built>(siteStep, wish);
  if (!known || known.value.digest === null) return null;
  const stands = await siteStands(effects.root, wish.audience, known.value.digest, wish.job ?? undefined);
  return stands ? known.value : null;
}

async function buildAnew(
  effects: Effects,
  choices: BuildChoices,
  crew: Crew,
): Promise<Built | { readonly refused: ExitStatus }> {
  const { audience, keepGoing, job } = choices;
  const loaded = await loadShop(effects, crew, { only: (id) => job === null || id === job, compares: false });
  // What the shop wrote is read once, for the site and for the names of other jobs.
  const whole = { ...loaded, content: once(loaded.content) };
  const shop = job === null ? whole : shopOfJob(whole, job);
  tellProblems(shop, effects);
  if (job !== null && shop.jobs.length === 0) {
    effects.tell(missingJob(shop, job));
    return { refused: missingStatus(shop) };
  }
  const made = await siteWithPhotos(effects, shop);
  const lone = made && job !== null ? loneSiteOf(made.site, shop, job) : null;
  const site = lone?.site ?? made?.site;
  const photoProblems = made?.problems ?? [];
  for (const problem of photoProblems) effects.tell(problemText(problem));
  if (!site || (shop.problems.length > 0 && !keepGoing)) {
    const count = shop.problems.length;
    effects.tell(
      `${count} error${count === 1 ? '' : 's'}: the site was not built, the last good one is untouched`,
    );
    return { refused: exitStatus.inputErrors };
  }
  tellFailed(shop, effects);
  const refused = audience === 'customer' ? shop.jobs.filter((job) => tellNoPacket(job, effects)) : [];
  const { sites, failed } = await sitesOf(site, effects, choices, crew);
  for (const job of failed) effects.tell(failedText(job));
  return {
    digest: audience === 'customer' ? null : (sites[0]?.digest ?? null),
    told: [
      ...(lone?.told ?? []),
      ...standingsOf(shop, failed),
      ...sites.map((one) => builtText(one, audience)),
    ],
    status: statusOf({
      problems: shop.problems.length + photoProblems.length > 0,
      stopped: anyStopped(shop) || refused.length > 0,
      failed: shop.failed.length + failed.length > 0,
    }),
    isWhole:
      shop.problems.length + photoProblems.length + shop.failed.length + failed.length === 0 &&
      audience !== 'customer',
  };
}

function standingsOf({ jobs }: LoadedShop, failed: readonly FailedJob[]): string[] {
  const broken = new Set(failed.map(({ id }) => id));
  return jobs.filter(({ job }) => !broken.has(job.id)).map(standingText);
}

function builtText({ pages, files, folder }: BuiltSite, audience: Audience): string {
  return audience === 'customer'
    ? `${pages} pages, ${files} files: ${folder}`
    : `${pages} pages, ${files} files: open ${join(folder, 'index.html')}`;
}

/** Builds the sites of an audience; a job that can't be drawn is left out of them. */
async function sitesOf(
  site: ShopSite,
  { root }: Effects,
  { audience, job: alone }: BuildChoices,
  crew: Crew,
): Promise<{ readonly sites: readonly BuiltSite[]; readonly failed: readonly FailedJob[] }> {
  const failed: FailedJob[] = [];
  for (;;) {
    const before = failed.length;
    const jobs = site.jobs.filter(({ plan }) => !failed.some(({ id }) => id === plan.job.id));
    if (alone !== null && jobs.length === 0) return { sites: [], failed };
    try {
      const sites = await buildSites(
        { ...site, jobs },
        {
          root,
          audience,
          ...(alone !== null && { job: alone }),
          keep: crew.keepLater,
          keepStep: crew.keep,
          drawingsOf: async (plan) => {
            const done = await crew.task('draw', plan);
            if (done.state === 'done') return done.value;
            failed.push({ id: plan.job.id, failure: done.failure });
            throw new Error(`The drawings of ${plan.job.id} could not be made.`);
          },
        },
      );
      return { sites, failed };
    } catch (error) {
      if (failed.length === before) throw error;
    }
  }
}
