import type { Guide } from '../../model/content/guide.ts';
import type { JobFile } from '../../model/content/job.ts';
import type { PromisedShelf } from '../../model/content/promised.ts';
import type { Shop } from '../../model/content/shop.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { WorkedHours } from '../../model/estimate/worked-hours.ts';
import type { Part } from '../../model/kinds/index.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import type { PublishedPhoto, PublishedPicture } from './published-photo.ts';
import type { SiteAsset } from './site-assets.ts';

/** A released revision, as it was frozen. */
export interface PublishedRevision {
  readonly revision: string;
  readonly plan: BuildPlan;
}

/** A job as the site shows it. The private values stand beside the plan, never in it. */
export interface PublishedJob {
  /** The plan of the current revision. */
  readonly plan: BuildPlan;
  readonly customer: JobFile['customer'];
  /** What the job writes for its owner; null where it could not be read. */
  readonly handOver: JobFile['hand-over'] | null;
  /** What was worked on it so far; none where it could not be read. */
  readonly worked: readonly WorkedHours[];
  /** Serial numbers of its equipment, by device. */
  readonly serials: Readonly<Record<string, string>>;
  /** Photos of the present revision; none where it has none. */
  readonly photos?: readonly PublishedPhoto[];
  /** Released revisions, oldest first. */
  readonly revisions: readonly PublishedRevision[];
}

/** Everything that the site of a shop shows: no page asks anything else. */
export interface ShopSite {
  /** True where it is the site of one job alone: it has no pages for who writes files, and none that ask for the whole shelf. */
  readonly isOneJob?: true;
  readonly shop: Shop;
  /** What of its stock is promised to released jobs that are not built in yet. */
  readonly promised: PromisedShelf;
  readonly parts: Readonly<Record<string, Part>>;
  readonly vehicles: Readonly<Record<string, Vehicle>>;
  readonly jobs: readonly PublishedJob[];
  readonly guides: readonly Guide[];
  /** The pictures of guides, by the guide and by their files. */
  readonly guidePictures?: Readonly<Record<string, Readonly<Record<string, PublishedPicture>>>>;
  /** The files of all photos and pictures. */
  readonly photos?: readonly SiteAsset[];
}

/** One drawing of a plan, as SVG markup, with the sheet that it belongs on. */
export interface PlanDrawing {
  readonly sheet: string;
  readonly id: string;
  readonly title: string;
  readonly svg: string;
  /** Who may see it; left out: those who build. */
  readonly openTo?: 'builders' | 'everyone';
  /** What found no place on it: told beside it, never dropped in silence. */
  readonly unplaced?: readonly string[];
}

/** Draws a plan. Called only when a page is written, so that no drawing is held longer than its page. */
export type DrawingsOf = (plan: BuildPlan) => readonly PlanDrawing[];
