import type { Problem } from '../../model/problem.ts';
import type { MadePage } from '../page/page.ts';
import type { SeenFile } from './file-looks.ts';

/** One page of a site, to be made from these files alone. */
export interface PageWish {
  readonly address: string;
  readonly files: readonly SeenFile[];
  /** Digest of the layouts that the page is made with. */
  readonly layouts: string;
}

/** What came of a wish: a throw is a fault of the program. */
export type PageMade =
  | ({ readonly state: 'made'; readonly problems: readonly Problem[] } & MadePage)
  /** The job, or the shop, could not be read. */
  | { readonly state: 'unread'; readonly problems: readonly Problem[] }
  /** The files make no page at that address. */
  | { readonly state: 'absent'; readonly problems: readonly Problem[] };

/** A file that is no page, by its path in the site. */
export interface MadeFile {
  readonly path: string;
  readonly content: Uint8Array;
}

export interface MakeOptions {
  /** Ends the work: what it was for is out of date. */
  readonly signal: AbortSignal;
  /** Whether a reader waits for it by now: it goes before what is made ahead. */
  readonly isAwaited: () => boolean;
}

/** Makes pages away from the server's thread: however long one takes, the server answers meanwhile. */
export interface PageMaker {
  /** Rejects with the reason of the signal where the work was ended, with the fault where the program has one. */
  page(wish: PageWish, options: MakeOptions): Promise<PageMade>;
  /** The search index over all pages. */
  search(wish: Omit<PageWish, 'address'>, options: MakeOptions): Promise<readonly MadeFile[]>;
  /** To be called when readers begin to wait for something: what they wait for goes first. */
  hurry(): void;
  close(): Promise<void>;
}
