import { comparePlans, countedStates } from '../../compare/compare-plans.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { sheetMark } from '../../model/plan/sheet-mark.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Link, Page, SiteContext } from '../page/page.ts';
import { type QrCode, qrCode } from '../page/qr-code.ts';
import { type SheetSection, sheetSections } from '../page/sheet-sections.ts';
import { factsOf } from '../reference/job-facts.ts';
import { likeAddress } from '../reference/past-boards.ts';
import { thumbnailFiles, thumbnailOf } from '../reference/thumbnail-file.ts';
import type { Fact } from '../sheets/table.ts';
import { addresses, linkTo, worksheetAddress } from '../site/addresses.ts';
import { customerFacts } from '../site/customer-facts.ts';
import { jobRecord } from '../site/search-fields.ts';
import type { PublishedJob } from '../site/shop-site.ts';
import { statusWords } from '../words/words.ts';
import { stateCounts } from './difference-table.ts';
import { seesEstimates } from './estimate-page.ts';
import {
  type CountsOf,
  changeLinks,
  goneOnFrom,
  type RevisionStanding,
  standingOf,
} from './released-revisions.ts';

/** A sheet in the index of the cover. */
interface IndexLine {
  readonly id: string;
  readonly title: string;
  /** The number of its first page on paper, empty until it is known; null on screen, which has no pages. */
  readonly page: string | null;
}

/** The page of a job: its sheets, one below the other. */
export interface JobBody {
  readonly job: BuildPlan['job'];
  readonly status: string;
  readonly vehicle: Link;
  readonly sections: readonly SheetSection[];
  readonly index: readonly IndexLine[];
  /** How many sheets the whole set has, where this is a part of it; null where it is whole. */
  readonly partOf: number | null;
  readonly customer: readonly Fact[];
  readonly worksheet: string;
  /** The way to the past boards that are nearest to its own; null where there is none. */
  readonly like: string | null;
  /** The way to its estimate, where the reader has one; else null. */
  readonly estimate: string | null;
  /** The way to this page from paper: its full address, and the same as a code; empty and null without a site to lead to. */
  readonly pageUrl: string;
  readonly qr: QrCode | null;
  /** True where the page opens on a quick view. */
  readonly hasQuickView: boolean;
  /** Each released revision, and what changed from one to the next. */
  readonly revisions: readonly Link[];
  /** Which revision stands, where this page is one of several. */
  readonly standing: RevisionStanding | null;
}

interface Place {
  readonly address: string;
  /** True for the page of a revision that was frozen. */
  readonly isFrozen: boolean;
  /** Where it is made for paper: the page on which each sheet begins, by its id, as far as it is known. */
  readonly printedPages?: ReadonlyMap<string, number>;
  /** The sheets that it has, where it is a short set. */
  readonly only?: readonly string[];
}

/** How a page is made for paper. */
export interface Printed {
  /** The page on which each sheet begins, by its id, as far as it is known. */
  readonly pages: ReadonlyMap<string, number>;
  /** The sheets of a short set; left out, all of them. */
  readonly only?: readonly string[];
}

function indexOf(
  sections: readonly SheetSection[],
  printedPages: ReadonlyMap<string, number> | undefined,
): IndexLine[] {
  return sections.map(({ id, title }) => ({
    id,
    title,
    page: printedPages === undefined ? null : String(printedPages.get(id) ?? ''),
  }));
}

function revisionLinks(job: PublishedJob, from: string): Link[] {
  const { id } = job.plan.job;
  const frozen = job.revisions.map(({ revision, plan }) => ({
    title: `Revision ${revision}, as released${plan.job.status === 'superseded' ? ', superseded' : ''}`,
    href: linkTo(from, addresses.revision(id, revision)),
  }));
  return [...frozen, ...changeLinks(job, from)];
}

function jobBody(context: SiteContext, job: PublishedJob, plan: BuildPlan, place: Place): JobBody {
  const { address, isFrozen, printedPages, only } = place;
  const whole = sheetSections(plan, context.audience, isFrozen ? [] : job.photos);
  const sections = only ? whole.filter((section) => only.includes(section.id)) : whole;
  const { id, revision } = plan.job;
  const pageUrl = fullAddress(plan, addresses.job(id));
  const like = isFrozen ? null : likeAddress(context, plan);
  return {
    job: plan.job,
    status: statusWords[plan.job.status],
    vehicle: { title: plan.vehicle.title, href: linkTo(address, addresses.vehicle(plan.vehicle.id)) },
    sections,
    index: indexOf(sections, printedPages),
    partOf: only ? whole.length : null,
    customer: customerFacts(job.customer, context.audience),
    worksheet: linkTo(address, worksheetAddress(id, isFrozen ? revision : null)),
    like: like && linkTo(address, like),
    estimate: seesEstimates(context.audience) ? linkTo(address, addresses.estimate(id)) : null,
    pageUrl,
    qr: pageUrl === '' ? null : qrCode(pageUrl),
    hasQuickView: sections.some(({ id: sheet }) => sheet === 'quick-view'),
    revisions: revisionLinks(job, address),
    standing: isFrozen
      ? standingOf(job, revision, address, countsFor(context))
      : goneOnFrom(job, address, countsFor(context)),
  };
}

/** Counts what differs, for who reads the page. */
function countsFor({ site, audience }: SiteContext): CountsOf {
  const look = { audience, style: lengthStyle(site.shop) };
  return ({ before, after }) => stateCounts(countedStates(comparePlans(before, after, look)));
}

/** The address of a page on the shop's site; empty where the shop names none. */
function fullAddress({ shop: { siteUrl } }: Pick<BuildPlan, 'shop'>, address: string): string {
  return siteUrl === null ? '' : `${siteUrl.replace(/\/+$/, '')}${address}`;
}

function pageOf(context: SiteContext, job: PublishedJob, plan: BuildPlan, place: Place): Page {
  const { id, title, revision, status, issuedOn } = plan.job;
  const above = place.isFrozen ? [[title, addresses.job(id)] as const] : [];
  return {
    address: place.address,
    template: 'job.njk',
    plan,
    ...(!place.isFrozen && {
      search: () =>
        jobRecord(factsOf(plan, context.audience), context.site.shop, thumbnailOf(plan)?.path ?? null),
      beside: () => thumbnailFiles(plan),
    }),
    model: () => {
      const body = jobBody(context, job, plan, place);
      const chrome = chromeOf(context, {
        address: place.address,
        title: place.isFrozen ? `${title}, revision ${revision}` : title,
        above: [['Jobs', addresses.jobs], ...above],
        mark: sheetMark(plan)?.word ?? null,
        foot: `${id}, revision ${revision}, ${statusWords[status].toLowerCase()}, issued ${issuedOn}`,
        sheets: body.sections,
      });
      return { ...chrome, body };
    },
  };
}

/** The pages of a job: the current revision, and each frozen one. */
export function jobPages(context: SiteContext, job: PublishedJob): Page[] {
  const { id } = job.plan.job;
  const current = pageOf(context, job, job.plan, { address: addresses.job(id), isFrozen: false });
  const frozenOnes = job.revisions.map(({ revision, plan }) =>
    pageOf(context, job, plan, { address: addresses.revision(id, revision), isFrozen: true }),
  );
  return [current, ...frozenOnes];
}

/** The page of the current revision as it is printed: its index tells on which page each sheet begins. */
export function printedJobPage(
  context: SiteContext,
  job: PublishedJob,
  { pages: printedPages, only }: Printed,
): Page {
  const place = {
    address: addresses.job(job.plan.job.id),
    isFrozen: false,
    printedPages,
    ...(only && { only }),
  };
  return pageOf(context, job, job.plan, place);
}
