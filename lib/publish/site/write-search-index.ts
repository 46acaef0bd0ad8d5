import { close, createIndex, type PagefindIndex } from 'pagefind';
import type { Page, SearchRecord } from '../page/page.ts';
import { indexWords } from '../search/search-words.ts';
import { fileOf } from './addresses.ts';
import type { SiteAsset } from './site-assets.ts';

/** Files of the search library that the search page has no use for: ready-made screens and their styles. */
const unused = /^pagefind-(ui|modular-ui|component-ui|highlight)\b/;

/** The file with every word of the index and the number of pages that it is on: what a slip of the keys is held against. */
export const knownWordsPath = 'pagefind/known-words.json';

/** A page with the words by which it is found. */
interface Known {
  readonly address: string;
  readonly record: SearchRecord;
  readonly words: IndexedWords;
}

interface IndexedWords {
  /** What it is known by, which weighs more. */
  readonly known: readonly string[];
  /** All. */
  readonly all: readonly string[];
}

/**
 * The search index of a site, as files under `pagefind/`. The library is given words that it keeps apart, not texts: of `1/0`
 * it would make a ten. Pages are added by address, since the bytes of an index depend on the order. Throws where the search
 * library is missing or fails.
 */
export async function searchIndex(pages: readonly Page[]): Promise<SiteAsset[]> {
  const known = pages
    .flatMap(({ address, search }) => (search ? [knownPage(address, search())] : []))
    .sort((a, b) => (a.address < b.address ? -1 : 1));
  if (known.length === 0) return [];
  const words = new TextEncoder().encode(JSON.stringify(knownWords(known)));
  const files = await whileLibraryRuns(() => indexOf(known));
  return [...files, { path: knownWordsPath, read: async () => words }].sort((a, b) =>
    a.path < b.path ? -1 : 1,
  );
}

function knownPage(address: string, record: SearchRecord): Known {
  const known = [...new Set([record.title, ...record.knownBy].flatMap(indexWords))];
  const all = new Set([...known, ...[...record.names, ...record.lines].flatMap(indexWords)]);
  return { address, record, words: { known, all: [...all] } };
}

/** Every word with the number of pages that it is on, in order. */
function knownWords(pages: readonly Known[]): Record<string, number> {
  const counts = new Map<string, number>();
  for (const { words } of pages) for (const word of words.all) counts.set(word, (counts.get(word) ?? 0) + 1);
  return Object.fromEntries([...counts].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** How many indices of this process are being made. */
let underWay = 0;

/**
 * Runs what needs the search library, which serves a whole process: who ends it while another index is being made
 * ends that one too. So the last one out ends it.
 */
async function whileLibraryRuns<T>(work: () => Promise<T>): Promise<T> {
  underWay += 1;
  try {
    return await work();
  } finally {
    underWay -= 1;
    if (underWay === 0) await close();
  }
}

async function indexOf(known: readonly Known[]): Promise<SiteAsset[]> {
  const { index, errors } = await createIndex({ forceLanguage: 'en' });
  if (index === undefined) throw new Error(`The search index can't be made: ${errors.join('; ')}`);
  try {
    for (const page of known) await add(index, page);
    return await filesOf(index);
  } finally {
    await index.deleteIndex();
  }
}

/** How often a word that a page is known by stands among its words. */
const knownWeight = 4;

async function add(index: PagefindIndex, { address, record, words }: Known): Promise<void> {
  const { title, kind, summary, lines, names, facets, picture } = record;
  const content = [...Array.from({ length: knownWeight }, () => words.known).flat(), ...words.all].join(' ');
  const filters = Object.entries(facets).filter(([, values]) => values.length > 0);
  const { errors } = await index.addCustomRecord({
    url: address,
    content,
    language: 'en',
    meta: {
      title,
      kind,
      summary,
      file: fileOf(address),
      lines: lines.join('\n'),
      names: names.join('\n'),
      ...(picture !== null && { picture }),
    },
    filters: { kind: [kind], ...Object.fromEntries(filters.map(([id, values]) => [id, [...values]])) },
  });
  if (errors.length > 0) throw new Error(`${address} can't be indexed: ${errors.join('; ')}`);
}

async function filesOf(index: PagefindIndex): Promise<SiteAsset[]> {
  const { files, errors } = await index.getFiles();
  if (errors.length > 0) throw new Error(`The search index can't be made: ${errors.join('; ')}`);
  return files
    .filter(({ path }) => !unused.test(path))
    .map(({ path, content }) => ({ path: `pagefind/${path}`, read: async () => content }));
}
