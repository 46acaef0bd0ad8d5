import type { ExportedFile } from '../export/exported-file.ts';
import { type AnchorPages, openAnchorReader } from '../export/print/anchor-pages.ts';
import { openPrinter, type Printer, type PrintJob } from '../export/print/print-pdf.ts';
import { mostPasses, settledPrint } from '../export/print/settled-print.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import { renderPage } from '../publish/page/render-page.ts';
import { printedJobPage } from '../publish/pages/job-page.ts';
import { benchSheets } from '../publish/sheets/index.ts';
import type { DrawingsOf, PublishedJob, ShopSite } from '../publish/site/shop-site.ts';
import { siteAssets } from '../publish/site/site-assets.ts';
import { openTemplates } from '../publish/site/templates.ts';
import { jobDrawings } from './drawings.ts';
import type { JobOnSite } from './shop/site-of-job.ts';

/** Stands for the address of a shop that has no site: links of the PDF then lead nowhere, and to no machine. */
const noSite = 'http://site.invalid/';

/** All sheets of a job, or those that lie on the bench while its board is built. */
export type SheetSet = 'whole' | 'bench';

const types: Readonly<Record<string, string>> = {
  css: 'text/css',
  js: 'text/javascript',
  svg: 'image/svg+xml',
  woff2: 'font/woff2',
  jpg: 'image/jpeg',
};

/**
 * The page of a job as one PDF with bookmarks: the same page that the site of the bench has, without a private value.
 * What is missing comes back as a text.
 */
export async function printSet(
  { site, job }: JobOnSite,
  set: SheetSet = 'whole',
): Promise<ExportedFile | string> {
  const printer = await openPrinter();
  if ('missing' in printer) return printer.missing;
  try {
    const content = await printedSet(printer, site, job, set);
    const name = set === 'whole' ? 'sheets.pdf' : 'bench-sheets.pdf';
    return typeof content === 'string' ? content : { name, content };
  } finally {
    await printer.close();
  }
}

/**
 * The set of a job as a PDF, with the page on which each sheet begins in the index of its cover: printed once to find
 * these pages, and again with them. What is missing comes back as a text.
 */
export async function printedSet(
  printer: Pick<Printer, 'print'>,
  site: ShopSite,
  job: PublishedJob,
  set: SheetSet = 'whole',
): Promise<Uint8Array | string> {
  const read = await openAnchorReader();
  if (!read) return 'PDF needs the package pdfjs-dist: run npm install pdfjs-dist';
  const drawings = jobDrawings()(job.plan);
  const pdf = await settledPrint(
    (pages) => printer.print(setToPrint(site, job, { pages, drawingsOf: () => drawings, set })),
    read,
  );
  return (
    pdf ?? `the page numbers of its index changed with each of ${mostPasses} prints: print it from a browser`
  );
}

interface SetParts {
  readonly set: SheetSet;
  /** The page on which each sheet begins, as far as it is known. */
  readonly pages: AnchorPages;
  readonly drawingsOf: DrawingsOf;
}

/** What a browser is given to print the set of a job: its page, and what the page asks for. */
export function setToPrint(
  site: ShopSite,
  job: PublishedJob,
  { pages, drawingsOf, set }: SetParts = { pages: new Map(), drawingsOf: jobDrawings(), set: 'whole' },
): PrintJob {
  const { plan } = job;
  const page = printedJobPage({ site: { ...site, jobs: [job] }, audience: 'bench' }, job, {
    pages,
    ...(set === 'bench' && { only: benchSheets }),
  });
  const files = [...siteAssets(), ...(site.photos ?? [])];
  const assets = new Map(files.map(({ path, read }) => [new URL(path, baseOf(plan)).href, { path, read }]));
  return {
    address: printedAt(plan, page.address),
    html: renderPage(page, openTemplates(), drawingsOf),
    read: async (address) => {
      const asset = assets.get(address);
      if (!asset) return null;
      const type = types[asset.path.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
      return { type, body: await asset.read() };
    },
    day: plan.job.issuedOn,
  };
}

/** Where links of a printed page start from. */
function baseOf({ shop }: Pick<BuildPlan, 'shop'>): string {
  const given = shop.siteUrl ?? noSite;
  return given.endsWith('/') ? given : `${given}/`;
}

/** The full address that a page is printed at. */
export function printedAt(plan: Pick<BuildPlan, 'shop'>, address: string): string {
  return new URL(address.replace(/^\//, ''), baseOf(plan)).href;
}
