import type { SourceFile } from '../../model/content/source-file.ts';
import type { MadeFile, PageMade, PageWish } from '../../publish/serve/page-maker.ts';

/** What a thread is opened with. */
export interface PageThreadData {
  /** The folder that holds `content/`. */
  readonly root: string;
}

/** What a thread is asked for. */
export type PageTask =
  | { readonly what: 'page'; readonly wish: PageWish }
  | { readonly what: 'search'; readonly wish: Omit<PageWish, 'address'> }
  | { readonly what: 'schemas'; readonly wish: Pick<PageWish, 'files'> };

/** What a thread sends back. */
export interface PageThreadAnswer {
  readonly answer: PageAnswer;
  /** Why results could not be kept, such as a full disk; null while they can. */
  readonly unkept: string | null;
}

/** What came of a task. */
export type PageAnswer =
  | { readonly what: 'page'; readonly made: PageMade }
  | { readonly what: 'search'; readonly made: readonly MadeFile[] }
  | { readonly what: 'schemas'; readonly made: readonly SourceFile[] }
  /** A fault of the program, with the chain of its causes. */
  | { readonly what: 'fault'; readonly chain: readonly string[] };
