import { comparePlans, countedStates, type TableDifference } from '../../compare/compare-plans.ts';
import { boardOverlays } from '../../compare/overlay.ts';
import { type DrawnOverlay, drawBoardOverlay } from '../../draw/overlay/board-overlay.ts';
import type { Audience } from '../../model/audience.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Link, Page, SiteContext } from '../page/page.ts';
import type { Table } from '../sheets/table.ts';
import { addresses, linkTo } from '../site/addresses.ts';
import { shippedMetrics } from '../site/shipped-metrics.ts';
import type { PublishedJob } from '../site/shop-site.ts';
import { statusWords } from '../words/words.ts';
import { differenceTable, stateCounts } from './difference-table.ts';
import { successions } from './released-revisions.ts';

/** One of the two that are compared, with its page. */
export interface Side {
  /** What it is called beside the other. */
  readonly name: string;
  readonly plan: BuildPlan;
  /** Null where the page leads nowhere. */
  readonly address: string | null;
}

/** One of the two as the page names it: its link leads nowhere where it is empty. */
interface ComparedSide extends Link {
  readonly word: string;
  readonly says: string;
  readonly issuedOn: string;
}

/** What differs between two plans. */
export interface CompareBody {
  readonly sides: readonly ComparedSide[];
  /** What differs in all, in a line. */
  readonly counts: string;
  readonly tables: readonly { readonly id: string; readonly table: Table }[];
  /** Titles of the tables in which nothing differs, and of those that one of the two was frozen without. */
  readonly same: readonly string[];
  readonly notKept: readonly string[];
  readonly drawings: readonly (DrawnOverlay & { readonly placing: 'inline' })[];
}

/** Where a page of a comparison stands, and what it is called. */
interface Face {
  readonly address: string;
  readonly title: string;
  readonly above: readonly (readonly [string, string])[];
}

/** A plan with its page, by its job and its revision. */
function sideAt(plan: BuildPlan, address: string): Side {
  return { name: `${plan.job.id}, revision ${plan.job.revision}`, plan, address };
}

/** The page that holds one plan against another: boards laid over each other, then every table that differs. */
export function comparePage(context: SiteContext, before: Side, after: Side, face: Face): Page {
  return {
    address: face.address,
    template: 'compare.njk',
    model: () => ({
      ...chromeOf(context, { ...face, foot: `${after.name}, against ${before.name}` }),
      body: compareBody(context, before, after, face.address),
    }),
  };
}

function compareBody({ site, audience }: SiteContext, before: Side, after: Side, from: string): CompareBody {
  const compared = comparePlans(before.plan, after.plan, { audience, style: lengthStyle(site.shop) });
  const differing = compared.filter(({ rows }) => rows.length > 0);
  const titles = (of: readonly TableDifference[]): string[] => of.map(({ title }) => title);
  return {
    sides: [sideOf('Before', before, from), sideOf('Now', after, from)],
    counts: stateCounts(countedStates(compared)),
    tables: differing.map((one) => ({ id: one.id, table: differenceTable(one) })),
    same: titles(compared.filter(({ rows, isKept }) => isKept && rows.length === 0)),
    notKept: titles(compared.filter(({ isKept }) => !isKept)),
    drawings: overlays(before, after, compared, audience),
  };
}

function sideOf(word: string, { name, plan, address }: Side, from: string): ComparedSide {
  const { status, issuedOn, title } = plan.job;
  const href = address === null ? '' : linkTo(from, address);
  return { word, title: name, href, says: `${title}; ${statusWords[status].toLowerCase()}`, issuedOn };
}

/** The boards laid over each other; none where nothing on them differs, nor the boards themselves. */
function overlays(
  before: Side,
  after: Side,
  compared: readonly TableDifference[],
  audience: Audience,
): CompareBody['drawings'] {
  return boardOverlays(before.plan, after.plan, compared, audience).flatMap((overlay) => {
    const { edges, items, holes } = overlay;
    if ([...edges, ...items, ...holes].every(({ state }) => state === 'same')) return [];
    const drawn = drawBoardOverlay(overlay, {
      id: after.plan.job.id,
      before: before.name,
      after: after.name,
      metrics: shippedMetrics(),
    });
    return drawn ? [{ ...drawn, placing: 'inline' as const }] : [];
  });
}

/** What changed from each released revision of a job to the next, and from the last one to the job as it stands. */
function revisionPages(context: SiteContext, job: PublishedJob): Page[] {
  const { id, title } = job.plan.job;
  const addressOf = ({ job: { revision } }: Pick<BuildPlan, 'job'>): string =>
    revision === job.plan.job.revision ? addresses.job(id) : addresses.revision(id, revision);
  return successions(job).map(({ before, after, address }) =>
    comparePage(
      context,
      sideAt(before, addresses.revision(id, before.job.revision)),
      sideAt(after, addressOf(after)),
      {
        address,
        title: `What changed from ${before.job.revision} to ${after.job.revision}: ${title}`,
        above: [
          ['Jobs', addresses.jobs],
          [title, addresses.job(id)],
        ],
      },
    ),
  );
}

/** A job and the one before it in the same vehicle. */
export interface Neighbours {
  readonly before: PublishedJob;
  readonly after: PublishedJob;
}

/** Jobs of one vehicle in the order in which they were issued, each with the one before: as many pages as there are jobs. */
export function neighboursIn(jobs: readonly PublishedJob[], vehicle: string): Neighbours[] {
  const turn = ({ plan: { job } }: PublishedJob): string => `${job.issuedOn} ${job.id}`;
  const own = jobs
    .filter(({ plan }) => plan.vehicle.id === vehicle)
    .toSorted((a, b) => (turn(a) < turn(b) ? -1 : 1));
  return own.slice(1).flatMap((after, nth) => {
    const before = own[nth];
    return before ? [{ before, after }] : [];
  });
}

function vehiclePages(context: SiteContext, jobs: readonly PublishedJob[]): Page[] {
  return Object.values(context.site.vehicles).flatMap(({ id, title }) =>
    neighboursIn(jobs, id).map(({ before, after }) => {
      const side = ({ plan }: PublishedJob): Side => sideAt(plan, addresses.job(plan.job.id));
      return comparePage(context, side(before), side(after), {
        address: addresses.vehicleJob(id, after.plan.job.id),
        title: `${after.plan.job.title} against ${before.plan.job.title}`,
        above: [
          ['Vehicles', addresses.vehicles],
          [title, addresses.vehicle(id)],
        ],
      });
    }),
  );
}

/** The ways from the page of a vehicle to its jobs, each held against the one before. */
export function neighbourLinks(jobs: readonly PublishedJob[], vehicle: string): Link[] {
  return neighboursIn(jobs, vehicle).map(({ before, after }) => ({
    title: `${after.plan.job.id} against ${before.plan.job.id}`,
    href: linkTo(addresses.vehicle(vehicle), addresses.vehicleJob(vehicle, after.plan.job.id)),
  }));
}

/** Every page on which two plans are compared. */
export function comparePages(context: SiteContext, jobs: readonly PublishedJob[]): Page[] {
  return [...jobs.flatMap((job) => revisionPages(context, job)), ...vehiclePages(context, jobs)];
}
