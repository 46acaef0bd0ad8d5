import type { Audience } from '../../model/audience.ts';
import type { Keep } from '../../model/keep.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import type { SheetMark } from '../../model/plan/sheet-mark.ts';
import type { FacetValues } from '../reference/facets.ts';
import type { ShopSite } from '../site/shop-site.ts';
import type { SiteAsset } from '../site/site-assets.ts';

/** What a page is made from. */
export interface SiteContext {
  readonly site: ShopSite;
  readonly audience: Audience;
  /** Keeps what a page works out beside its plans, which holds no private value. Default: keeps none. */
  readonly keep?: Keep;
}

/** A link as a page prints it. */
export interface Link {
  readonly title: string;
  readonly href: string;
}

/** A link of the navigation. */
export interface NavigationLink extends Link {
  readonly current: boolean;
}

/** What every page has round its own matter. */
export interface Chrome {
  readonly address: string;
  readonly title: string;
  readonly shopName: string;
  /** The way up to the top of the site. */
  readonly top: string;
  readonly navigation: readonly NavigationLink[];
  /** The way to the search page; null where there is none. */
  readonly search: string | null;
  /** The pages above this one. */
  readonly trail: readonly Link[];
  /** `DRAFT` or `SUPERSEDED` on a page that nobody may build from. */
  readonly mark: SheetMark['word'] | null;
  /** Rules for the printed page: paper, running lines. Safe to stand in a style element. */
  readonly printRules: string;
}

/** What a page's template is given. */
export interface PageModel extends Chrome {
  readonly body: object;
}

/** What search knows of a page. Built from what the reader may see; never from a private value. */
export interface SearchRecord {
  readonly title: string;
  readonly kind: 'Job' | 'Part' | 'Vehicle' | 'Guide';
  /** A line under the title of a result. */
  readonly summary: string;
  /** What it is known by beside its title: words of these weigh as much as those of the title. */
  readonly knownBy: readonly string[];
  /** Texts by which it is found; those that answer a question are shown with the result. */
  readonly lines: readonly string[];
  /** Ids and labels by which it is found; of these only those that were asked for are shown. */
  readonly names: readonly string[];
  readonly facets: FacetValues;
  /** Path of its thumbnail from the top of the site; null where it has none. */
  readonly picture: string | null;
}

/** A file that stands beside a page: its path from the folder of the page, and its text. */
export interface PageFile {
  readonly path: string;
  readonly text: string;
}

/** A page as it is written, with the files that it takes from beside it. */
export interface MadePage {
  readonly html: string;
  readonly files: readonly PageFile[];
}

/** One page of the site. Its model is made when it is asked for and held by nobody. */
export interface Page {
  readonly address: string;
  readonly template: string;
  readonly model: () => PageModel;
  readonly search?: () => SearchRecord;
  /** The plan whose drawings the page shows. */
  readonly plan?: BuildPlan;
  /** Files beside it that follow from no drawing of its sheets. */
  readonly beside?: () => readonly PageFile[];
  /** Files beside those of every site that a page of one file takes in. */
  readonly photos?: readonly SiteAsset[];
  /** True for the page that runs the search library. */
  readonly runsSearch?: true;
  /** True for a page that is one file: style, scripts and fonts stand in it, so that it works wherever it lies. */
  readonly isOneFile?: true;
}
