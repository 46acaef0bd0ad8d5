import { type LookedFor, mendedWords } from './mended-words.ts';
import type { KnownWords } from './near-words.ts';
import { askedWords } from './search-words.ts';

/** A library that finds pages which have all of some words. */
export interface Searcher<Hit> {
  search(words: string | null, filters: Readonly<Record<string, string>>): Promise<readonly Hit[]>;
}

/** What was found, and by which words. */
export interface Found<Hit> {
  readonly hits: readonly Hit[];
  readonly looked: readonly LookedFor[];
  /** Words as typed that no page has beside the others: they were left out. */
  readonly leftOut: readonly string[];
}

/**
 * Looks for what was typed: for all words; then for what else they may mean; then without the words that no page has; then
 * without the one word without which the fewest pages are left. So a word too many never hides what there is.
 */
export async function lookFor<Hit>(
  typed: string,
  filters: Readonly<Record<string, string>>,
  known: KnownWords,
  library: Searcher<Hit>,
): Promise<Found<Hit>> {
  const looked = mendedWords(askedWords(typed), known);
  if (looked.length === 0) return { hits: await library.search(null, filters), looked, leftOut: [] };
  const find: Find<Hit> = (words, meant = false) =>
    library.search(words.flatMap((one) => (meant && one.or) || one.words).join(' '), filters);
  const all = await find(looked);
  if (all.length > 0) return { hits: all, looked, leftOut: [] };
  if (looked.some(({ or }) => or)) {
    const hits = await find(looked, true);
    if (hits.length > 0) return { hits, looked, leftOut: [] };
  }
  return withFewerWords(looked, find);
}

type Find<Hit> = (words: readonly LookedFor[], meant?: boolean) => Promise<readonly Hit[]>;

async function withFewerWords<Hit>(looked: readonly LookedFor[], find: Find<Hit>): Promise<Found<Hit>> {
  const alone = await Promise.all(looked.map(async (one) => (await find([one])).length));
  const there = looked.filter((_, at) => (alone[at] ?? 0) > 0);
  const typedOf = (words: readonly LookedFor[]): string[] => words.map(({ typed }) => typed);
  const absent = typedOf(looked.filter((one) => !there.includes(one)));
  let best: Found<Hit> = { hits: [], looked, leftOut: [] };
  if (there.length === 0) return best;
  if (there.length < looked.length) best = { hits: await find(there), looked, leftOut: absent };
  if (best.hits.length > 0 || there.length < 2) return best;
  for (const one of there) {
    const hits = await find(there.filter((other) => other !== one));
    if (hits.length > 0 && (best.hits.length === 0 || hits.length < best.hits.length))
      best = { hits, looked, leftOut: [...absent, one.typed] };
  }
  return best;
}
