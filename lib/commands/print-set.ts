import type { ExportedFile } from '../export/exported-file.ts';
import { openPrinter, type PrintJob } from '../export/print/print-pdf.ts';
import { jobPages } from '../publish/pages/job-page.ts';
import { renderPage } from '../publish/render-page.ts';
import type { PublishedJob, ShopSite } from '../publish/shop-site.ts';
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
  if (!site || !job) return 'the page of the job can not be made, since the shop file has errors';
  const printer = await openPrinter();
  if ('missing' in printer) return printer.missing;
  try {
    return { name: 'sheets.pdf', content: await printer.print(setToPrint(site, job)) };
  } finally {
    await printer.close();
  }
}

/** What a browser is given to print the set of a job: its page, and what the page asks for. */
export function setToPrint(site: ShopSite, job: PublishedJob): PrintJob {
  const { plan } = job;
  const [page] = jobPages({ site, audience: 'bench' }, job);
  if (!page) throw new Error(`The job ${plan.job.id} has no page.`);
  const given = plan.shop.siteUrl ?? noSite;
  const base = given.endsWith('/') ? given : `${given}/`;
  const assets = new Map(siteAssets().map(({ path, read }) => [new URL(path, base).href, { path, read }]));
  return {
    address: new URL(page.address.replace(/^\//, ''), base).href,
    html: renderPage(page, openTemplates(), jobDrawings()),
    read: async (address) => {
      const asset = assets.get(address);
      if (!asset) return null;
      const type = types[asset.path.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
      return { type, body: await asset.read() };
    },
    day: plan.job.issuedOn,
  };
}
