import type { Audience } from '../../model/audience.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import type { SheetMark } from '../../model/plan/sheet-mark.ts';
import type { ShopSite } from '../site/shop-site.ts';
import type { SiteAsset } from '../site/site-assets.ts';

/** What a page is made from. */
export interface SiteContext {
  readonly site: ShopSite;
  readonly audience: Audience;
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

/** What search knows of a page. Built from what every builder may see; never from a private value. */
export interface SearchRecord {
  readonly title: string;
  readonly kind: 'Job' | 'Part' | 'Vehicle' | 'Guide';
  /** A line under the title of a result. */
  readonly summary: string;
  readonly content: string;
  readonly vehicles: readonly string[];
  readonly parts: readonly string[];
  readonly boardMaterials: readonly string[];
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
  /** Files beside those of every site that a page of one file takes in. */
  readonly photos?: readonly SiteAsset[];
  /** True for the page that runs the search library. */
  readonly runsSearch?: true;
  /** True for a page that is one file: style, scripts and fonts stand in it, so that it works wherever it lies. */
  readonly isOneFile?: true;
}
