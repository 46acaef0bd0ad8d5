import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { jobDrawings } from '../../lib/commands/drawings.ts';
import { setToPrint } from '../../lib/commands/print-set.ts';
import { drawingKinds } from '../../lib/draw/drawings/index.ts';
import { openPrintPage, type PrintJob, pdfOptions } from '../../lib/export/print/print-pdf.ts';
import type { PublishedJob, ShopSite } from '../../lib/publish/site/shop-site.ts';
import { openBrowser } from '../browser.ts';
import { casesOf } from '../long-run.ts';
import { root } from '../plan/demo.ts';
import { siteInFolder } from '../shops/site-in-folder.ts';
import { brokenWholes, markWholes, type PrintedPage, readPrinted } from './print-marks.ts';

/** Sheets whose drawings are pictures among their text, without a page and a number of their own. */
const amongText: ReadonlySet<string> = new Set(
  Object.values(drawingKinds).flatMap(({ sheet, unframed }) => (unframed ? [sheet] : [])),
);

const site = await siteInFolder(root);

const papers = [
  {
    paper: 'letter',
    widthPt: 612,
    heightPt: 792,
    largerPaper: 'tabloid',
    largeWidthPt: 792,
    largeHeightPt: 1224,
  },
  {
    paper: 'a4',
    widthPt: 595.28,
    heightPt: 841.89,
    largerPaper: 'a3',
    largeWidthPt: 841.89,
    largeHeightPt: 1190.55,
  },
] as const;

/** The same shop and job on other paper. */
function onPaper(
  shop: ShopSite,
  job: PublishedJob,
  { paper, largerPaper }: (typeof papers)[number],
): readonly [ShopSite, PublishedJob] {
  const plan = { ...job.plan, shop: { ...job.plan.shop, paper, largerPaper } };
  return [
    { ...shop, shop: { ...shop.shop, paper } },
    { ...job, plan },
  ];
}

/** The set of the bench with all its sheets, printed for the first time. */
const whole = { audience: 'bench', set: 'whole', pages: new Map() } as const;

/** The smallest type of a sheet: the running lines at its edges. */
const smallestPt = 9;

describe('printed sets', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser?.close());

  async function printed(job: PrintJob, style = ''): Promise<{ pages: PrintedPage[]; wholes: number }> {
    const context = await browser.newContext({ locale: 'en-US', timezoneId: 'UTC' });
    const page = await openPrintPage(context, job);
    // What runs out at the side is no longer cut off: a browser then prints the whole set smaller.
    await page.addStyleTag({ content: `.table-wrap { overflow: visible !important } ${style}` });
    const wholes = await markWholes(page);
    const pages = await readPrinted(await page.pdf(pdfOptions));
    await context.close();
    return { pages, wholes };
  }

  const all = site.jobs.flatMap((job) => papers.map((paper) => ({ id: job.plan.job.id, job, ...paper })));
  // The first job on the first paper and the last one on the last.
  const cases = casesOf(all, (_, index, { length }) => index === 0 || index === length - 1);

  it.each(cases)(
    '$id on $paper: nothing is split, heads repeat, nothing runs off, each drawing has a page',
    async (one) => {
      const [shop, job] = onPaper(site, one.job, one);
      const drawn = jobDrawings()(job.plan);
      const { pages, wholes } = await printed(setToPrint(shop, job, { ...whole, drawingsOf: () => drawn }));
      const seen = new Set(pages.flatMap(({ marks }) => marks.filter((mark) => mark.startsWith('w'))));
      expect(new Set([...seen].map((mark) => mark.split('.')[0])).size, 'every whole is on paper').toBe(
        wholes,
      );
      expect(brokenWholes(pages)).toEqual([]);
      pages.forEach(({ text, smallestPt: size, widthPt, heightPt }, index) => {
        const name = `page ${index + 1}`;
        expect(text.replaceAll(' ', ''), name).toContain(`page${index + 1}of${pages.length}`);
        expect(size, `${name}: type of its true size`).toBeGreaterThan(smallestPt - 0.05);
        const [short, long] = [Math.min(widthPt, heightPt), Math.max(widthPt, heightPt)];
        const isLarge = /Format(Tabloid|A3)/.test(text.replaceAll(' ', ''));
        // A browser measures sheets in its pixels: they come out as much as a point larger.
        expect(Math.abs(short - (isLarge ? one.largeWidthPt : one.widthPt)), name).toBeLessThan(1);
        expect(Math.abs(long - (isLarge ? one.largeHeightPt : one.heightPt)), name).toBeLessThan(1);
        expect(text.length, `${name} is not empty`).toBeGreaterThan(150);
      });
      const drawings = drawn
        .filter(({ sheet }) => !amongText.has(sheet))
        .map((_, index, { length }) => `Drawing${index + 1} of ${length}`);
      const framed = pages.flatMap(({ text }) => (text.includes('Legal owner') ? [text] : []));
      expect(framed.map((text) => /Drawing\d+ of \d+/.exec(text)?.[0])).toEqual(drawings);
    },
  );

  it('are told to be broken where nothing keeps rows together, heads off later pages or tables on the page', async () => {
    const [job] = site.jobs;
    if (!job) throw new Error('There is no demo job.');
    const set = setToPrint(site, job, { ...whole, set: 'bench', drawingsOf: jobDrawings() });
    const loose =
      'main *, main tr { break-inside: auto !important } main tr td, main tr th { line-height: 6 }';
    const headless = 'thead { display: table-row-group !important }';
    const wide = 'main table { width: 300mm !important }';
    // All at once: each is told in words of its own.
    const { pages } = await printed(set, `${loose} ${headless} ${wide}`);
    const told = brokenWholes(pages).join('\n');
    expect(told).toMatch(/w\d+ lies on pages/);
    expect(told).toMatch(/has no head on page/);
    expect(Math.min(...pages.map(({ smallestPt: size }) => size))).toBeLessThan(smallestPt - 1);
  });
});
