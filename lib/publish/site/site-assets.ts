import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { withColumnKinds } from '../page/column-kinds.ts';
import { withSheetPages } from '../page/sheet-pages.ts';
import { bundleNames } from './bundles/names.ts';
import { bundledScript } from './bundles/script.ts';
import { projectFolder } from './templates.ts';

/** Parts of the style sheet of pages, in the order in which they are joined. */
const pageStyle = [
  'inks',
  'fonts',
  'measures',
  'text',
  'frame',
  'sheets',
  'qr-code',
  'tables',
  'table-cards',
  'work',
  'fields',
  'search',
  'hits',
  'calculators',
  'light-up',
  'ways',
  'quick',
  'print',
] as const;

/** Parts of the style of a drawing that is a file of its own. */
const drawingStyle = ['inks', 'fonts', 'drawing'] as const;

/** Parts of the style sheet of a packet, which is a page for readers that are no builders. */
const packetParts = ['inks', 'fonts', 'measures', 'text', 'packet'] as const;

/** Parts of the style sheet of an estimate: that of a packet, set for one page. */
const estimateParts = [...packetParts, 'estimate'] as const;

const families = ['ibm-plex-sans', 'ibm-plex-sans-condensed'] as const;
const weights = [400, 600] as const;
const files = [
  'drawing.js',
  'drawing-frames.js',
  'find.js',
  'contents.js',
  'last-visit.js',
  'sheet-order.js',
  'quick-view.js',
  'drawings.js',
  'light-up.js',
  'tables.js',
  'icon.svg',
] as const;

/** What comes with every site, by its path in the site: where it lies, or its text. */
export interface SiteAsset {
  readonly path: string;
  readonly read: () => Promise<Uint8Array>;
}

/** The style sheets, the browser scripts, the fonts and marks. */
export function siteAssets(): SiteAsset[] {
  const require = createRequire(import.meta.url);
  const fonts = families.flatMap((family) =>
    weights.map((weight) => {
      const name = `${family}-latin-${weight}-normal.woff2`;
      return asset(`fonts/${name}`, require.resolve(`@fontsource/${family}/files/${name}`));
    }),
  );
  return [
    {
      path: 'assets/styles.css',
      read: async () => encoded(withSheetPages(withColumnKinds(await joined(pageStyle)))),
    },
    { path: 'assets/drawing.css', read: async () => encoded(await joined(drawingStyle)) },
    { path: 'assets/packet.css', read: async () => encoded(await joined(packetParts)) },
    { path: 'assets/estimate.css', read: async () => encoded(await joined(estimateParts)) },
    ...files.map((name) => asset(name, join(projectFolder, 'site', name))),
    ...bundleNames.map((name) => ({
      path: `assets/${name}.js`,
      read: async () => encoded(await bundledScript(name)),
    })),
    ...fonts,
  ];
}

function asset(name: string, source: string): SiteAsset {
  return { path: `assets/${name}`, read: () => readFile(source) };
}

const encoded = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Style sheets, one after the other. */
async function joined(parts: readonly string[]): Promise<string> {
  const texts = await Promise.all(
    parts.map((part) => readFile(join(projectFolder, 'site', 'styles', `${part}.css`), 'utf8')),
  );
  return texts.join('\n');
}

/** Writes files below a folder. */
export async function writeSiteFiles(folder: string, assets: readonly SiteAsset[]): Promise<void> {
  for (const { path, read } of assets) {
    const target = join(folder, path);
    await mkdir(join(target, '..'), { recursive: true });
    await writeFile(target, await read());
  }
}
