import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { pageWithFiles } from '../../lib/publish/page/render-page.ts';
import { fileOf } from '../../lib/publish/site/addresses.ts';
import { plainNames } from '../../lib/publish/site/assets/asset-names.ts';
import { FilesBeside } from '../../lib/publish/site/disk/files-beside.ts';
import type { DrawingsOf, ShopSite } from '../../lib/publish/site/shop-site.ts';
import { siteAssets, writeSiteFiles } from '../../lib/publish/site/site-assets.ts';
import { sitePages } from '../../lib/publish/site/site-pages.ts';
import { openTemplates } from '../../lib/publish/site/templates.ts';
import { testCrew } from '../shops/test-crew.ts';

const mainOf = /<main[^>]*>([\s\S]*)<\/main>/;

/** What of a site is written. */
export interface Written {
  /** Default: no drawings. */
  readonly drawingsOf?: DrawingsOf;
  /** Whether a page is asked for, by its address. Default: all are. */
  readonly only?: (address: string) => boolean;
  /** The tables of pages that were written before, of another site as well; those of this one are added. */
  readonly seen?: Set<string>;
}

/**
 * Writes the pages of a shop's own site into a folder, without search. The pages of a job stand as they are; small ones of
 * one kind are joined in one, so that a browser need not open hundreds, and a page with the very tables of another is left
 * out. Gives the files in order.
 */
export async function writtenPages(
  site: ShopSite,
  folder: string,
  { drawingsOf = () => [], only = () => true, seen = new Set() }: Written = {},
): Promise<readonly string[]> {
  const look = { templates: openTemplates(), names: plainNames };
  const byFile = new Map<string, string>();
  const firstOf = new Map<string, string>();
  const beside = new FilesBeside(folder);
  for (const page of sitePages({ site, audience: 'shop', keep: testCrew().keep })) {
    if (!only(page.address)) continue;
    const { html, files } = pageWithFiles(page, look, drawingsOf);
    const tables = (html.match(/<table[\s\S]*?<\/table>/g) ?? []).join('');
    if (seen.has(tables)) continue;
    seen.add(tables);
    const file = fileOf(page.address);
    await beside.write(page.address, files);
    const first = firstOf.get(page.template);
    const alone = ['job.njk', 'worksheet.njk'].includes(page.template);
    if (alone || first === undefined) byFile.set(file, html);
    else byFile.set(first, joined(byFile.get(first) ?? '', html));
    if (first === undefined) firstOf.set(page.template, file);
  }
  for (const [file, html] of byFile) {
    await mkdir(dirname(join(folder, file)), { recursive: true });
    await writeFile(join(folder, file), html);
  }
  await writeSiteFiles(folder, siteAssets());
  return [...byFile.keys()];
}

/** A page with the content of another one below its own, and the styles of both: no policy of one page allows these. */
function joined(page: string, other: string): string {
  // Each page counts its own styles.
  const counted = other.replace(/data-style="/g, () => `data-style="${page.length}-`);
  const more = mainOf.exec(counted)?.[1] ?? '';
  const styles = (counted.match(/<style>[\s\S]*?<\/style>/g) ?? []).join('\n');
  return page
    .replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '')
    .replace('</head>', () => `${styles}\n</head>`)
    .replace('</main>', () => `${more}</main>`);
}
