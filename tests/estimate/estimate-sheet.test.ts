import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPrinter } from '../../lib/export/print/print-pdf.ts';
import { shopSchema } from '../../lib/model/content/shop.ts';
import { workedHoursSchema } from '../../lib/model/estimate/worked-hours.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import { estimatePage } from '../../lib/publish/pages/estimate-page.ts';
import { wholeFile } from '../../lib/publish/site/kept-pages.ts';
import { siteAssets } from '../../lib/publish/site/site-assets.ts';
import { openTemplates } from '../../lib/publish/site/templates.ts';
import { fixedPlan } from '../boards/fixed-jobs.ts';
import { openBrowser } from '../browser.ts';
import { sampleJob, sampleSite } from '../publish/sample/sample-site.ts';
import { complaintsOf, expectSoundSheet } from '../site/page-checks.ts';
import { readPrinted } from '../site/print-marks.ts';

const van = fixedPlan('van-three-amps');

/** A job that takes more devices, with long titles, beside what the van takes, of which no part has a price. */
const crowded: BuildPlan = {
  ...van,
  pick: [
    ...van.pick,
    ...Array.from({ length: 18 }, (_, at) => ({
      ...{ part: `amp-${at}`, kind: 'amplifier', quantity: 2, stockQuantity: 2, short: 0 },
      title: `Four-channel amplifier with a processor and a remote control, ${at + 4} x 75 W`,
      unit: 'piece' as const,
    })),
  ],
};

interface Written {
  readonly paper: 'letter' | 'a4';
  readonly priced: boolean;
}

/** The sheet of an estimate as its file. */
function sheetOf(plan: BuildPlan, { paper, priced }: Written): Promise<string> {
  const prices = plan.pick.map(({ part, unit }) => [part, unit === 'm' ? '1.25 per ft' : '419.00 each']);
  const shop = shopSchema.pick({ currency: true, prices: true, estimate: true }).parse({
    currency: 'USD',
    prices: priced ? Object.fromEntries(prices) : {},
    estimate: { labour: '85 per h', markup: '30 %', tax: '6.25 %' },
  });
  const worked = [
    workedHoursSchema.parse({ day: '2026-02-10', layer: 'board', worked: '2.5 h' }),
    workedHoursSchema.parse({ day: '2026-02-12', worked: '35 min' }),
  ];
  const job = { ...sampleJob(plan), worked };
  const site = sampleSite([job]);
  const page = estimatePage(
    { site: { ...site, shop: { ...site.shop, ...shop, paper } }, audience: 'shop' },
    job,
  );
  if (page === null) throw new Error('The shop has an estimate.');
  return wholeFile(page, {
    templates: openTemplates({ strict: true }),
    assets: siteAssets(),
    drawingsOf: () => [],
  });
}

async function printedPages(html: string): Promise<string[]> {
  const printer = await openPrinter();
  if ('missing' in printer) throw new Error(printer.missing);
  const address = 'http://site.invalid/estimate.html';
  const pdf = await printer.print({ address, html, read: async () => null, day: '2026-02-09' });
  await printer.close();
  return (await readPrinted(pdf)).map(({ text }) => text.replaceAll(/\s/g, ''));
}

describe('the sheet of an estimate', () => {
  let browser: Browser;
  let page: Page;
  let complaints: string[] = [];
  beforeAll(async () => {
    browser = await openBrowser();
    page = await (
      await browser.newContext({ offline: true, viewport: { width: 1280, height: 800 } })
    ).newPage();
    complaints = complaintsOf(page);
    await page.setContent(await sheetOf(van, { paper: 'letter', priced: true }));
  });
  afterAll(() => browser.close());

  it('is sound by ear, on a desk, on a phone and in the dark, and cuts no figure', async () => {
    expect(complaints).toEqual([]);
    await expectSoundSheet(page);
  });

  it.each([
    ['the van', () => van, 'letter', true],
    ['the van', () => van, 'a4', true],
    ['the van without a price', () => van, 'letter', false],
    ['a job with many devices', () => crowded, 'letter', true],
    ['a job with many devices, without a price', () => crowded, 'letter', false],
  ] as const)('prints on one page: %s', async (_, planOf, paper, priced) => {
    const pages = await printedPages(await sheetOf(planOf(), { paper, priced }));
    expect(pages).toHaveLength(1);
    const [text = ''] = pages;
    expect(text).toContain('Estimate');
    expect(text).toContain('Wholejob');
    expect(text).toContain(priced ? 'Total' : 'Total,atleast');
  });
});
