import { close, createIndex, type PagefindIndex } from 'pagefind';
import type { Page, SearchRecord } from '../page/page.ts';
import { fileOf } from './addresses.ts';
import type { SiteAsset } from './site-assets.ts';

/** Files of the search library that the search page has no use for: ready-made screens and their styles. */
const unused = /^pagefind-(ui|modular-ui|component-ui|highlight)\b/;

/**
 * The search index of a site, as files under `pagefind/`. Pages are added by address, since the bytes of an
 * index depend on the order. Throws where the search library is missing or fails.
 */
export async function searchIndex(pages: readonly Page[]): Promise<SiteAsset[]> {
  const known = pages
    .flatMap(({ address, search }) => (search ? [{ address, record: search() }] : []))
    .sort((a, b) => (a.address < b.address ? -1 : 1));
  if (known.length === 0) return [];
  return whileLibraryRuns(() => indexOf(known));
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

async function indexOf(
  known: readonly { readonly address: string; readonly record: SearchRecord }[],
): Promise<SiteAsset[]> {
  const { index, errors } = await createIndex({ forceLanguage: 'en' });
  if (index === undefined) throw new Error(`The search index can't be made: ${errors.join('; ')}`);
  try {
    for (const { address, record } of known) await add(index, address, record);
    return await filesOf(index);
  } finally {
    await index.deleteIndex();
  }
}

async function add(index: PagefindIndex, address: string, record: SearchRecord): Promise<void> {
  const { title, kind, summary, content, vehicles, parts, boardMaterials } = record;
  const { errors } = await index.addCustomRecord({
    url: address,
    content,
    language: 'en',
    meta: { title, kind, summary, file: fileOf(address) },
    filters: {
      kind: [kind],
      ...(vehicles.length > 0 && { vehicle: [...vehicles] }),
      ...(parts.length > 0 && { part: [...parts] }),
      ...(boardMaterials.length > 0 && { board: [...boardMaterials] }),
    },
  });
  if (errors.length > 0) throw new Error(`${address} can't be indexed: ${errors.join('; ')}`);
}

async function filesOf(index: PagefindIndex): Promise<SiteAsset[]> {
  const { files, errors } = await index.getFiles();
  if (errors.length > 0) throw new Error(`The search index can't be made: ${errors.join('; ')}`);
  return files
    .filter(({ path }) => !unused.test(path))
    .map(({ path, content }) => ({ path: `pagefind/${path}`, read: async () => content }))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}
