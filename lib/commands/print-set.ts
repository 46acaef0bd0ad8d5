import type { ExportedFile } from '../export/exported-file.ts';
import { openPrinter } from '../export/print/print-pdf.ts';
import { jobPages } from '../publish/pages/job-page.ts';
import { renderPage } from '../publish/render-page.ts';
import { siteAssets } from '../publish/site-assets.ts';
import { openTemplates } from '../publish/templates.ts';
import { jobDrawings } from './drawings.ts';
import { type LoadedJob, type LoadedShop, siteOf } from './load-shop.ts';

/** Stands for the address of a shop that has no site: links of the PDF then lead nowhere, and to no machine. */
const noSite = 'http://site.invalid/';

const types: Readonly<Record<string, string>> = {
  css: 'text/css',
  js: 'text/javascript',
  svg: 'image/svg+xml',
  woff2: 'font/woff2',
};

/**
 * The page of a job as one PDF with bookmarks, for the bench: the same page that the site has, so no private value
 * is in it. What is missing comes back as a text.
 */
export async function printSet(shop: LoadedShop, { plan }: LoadedJob): Promise<ExportedFile | string> {
  const site = siteOf(shop);
  const job = site?.jobs.find((one) => one.plan.job.id === plan.job.id);
  const [page] = site && job ? jobPages({ site, audience: 'bench' }, job) : [];
  if (!page) return 'the page of the job can not be made, since the shop file has errors';
  const printer = await openPrinter();
  if ('missing' in printer) return printer.missing;
  const given = plan.shop.siteUrl ?? noSite;
  const base = given.endsWith('/') ? given : `${given}/`;
  const assets = new Map(siteAssets().map(({ path, read }) => [new URL(path, base).href, { path, read }]));
  try {
    const content = await printer.print({
      address: new URL(page.address.replace(/^\//, ''), base).href,
      html: renderPage(page, openTemplates(), jobDrawings()),
      read: async (address) => {
        const asset = assets.get(address);
        if (!asset) return null;
        const type = types[asset.path.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
        return { type, body: await asset.read() };
      },
      day: plan.job.issuedOn,
    });
    return { name: 'sheets.pdf', content };
  } finally {
    await printer.close();
  }
}
