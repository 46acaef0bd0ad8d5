import type { Searcher } from '../../lib/publish/search/look-for.ts';

/** A page that was found, with what the index keeps of it. */
export interface FoundPage {
  readonly meta: Readonly<Record<string, string>>;
}

/** A page that is loaded only when it is shown. */
export interface Hit {
  readonly data: () => Promise<FoundPage>;
}

/** What the search library gives, as far as it is used. */
interface RawLibrary {
  options(options: Readonly<Record<string, unknown>>): Promise<void>;
  filters(): Promise<Readonly<Record<string, Readonly<Record<string, number>>>>>;
  search(
    words: string | null,
    options: { readonly filters: Readonly<Record<string, string>> },
  ): Promise<{ readonly results: readonly Hit[] }>;
}

/** The search library over the index of this site. */
export interface PageLibrary extends Searcher<Hit> {
  filters: RawLibrary['filters'];
}

export function isLibrary(loaded: unknown): loaded is RawLibrary {
  return typeof loaded === 'object' && loaded !== null && 'search' in loaded && 'filters' in loaded;
}

/** What a page is called is told by its words, which are weighed; what is only shown of it is not searched. */
const shownOnly = { title: 0, kind: 0, summary: 0, file: 0, lines: 0, names: 0, picture: 0 };

export async function openLibrary(raw: RawLibrary): Promise<PageLibrary> {
  await raw.options({ excerptLength: 1, ranking: { metaWeights: shownOnly } });
  return {
    filters: () => raw.filters(),
    search: async (words, filters) => (await raw.search(words, { filters })).results,
  };
}
