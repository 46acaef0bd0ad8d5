import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { printedSet } from '../../lib/commands/print-set.ts';
import { openPrinter, type Printer } from '../../lib/export/print/print-pdf.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import { renderPage } from '../../lib/publish/page/render-page.ts';
import { sheetSections } from '../../lib/publish/page/sheet-sections.ts';
import { jobPages } from '../../lib/publish/pages/job-page.ts';
import { openTemplates } from '../../lib/publish/site/templates.ts';
import { openPdf, strokesOf } from '../export/pdf-strokes.ts';
import { casesOf } from '../long-run.ts';
import { root } from '../plan/demo.ts';
import { siteInFolder } from '../shops/site-in-folder.ts';

const shop = await siteInFolder(root);
/** The first job, and in the long run every one. */
const printed = casesOf(shop.jobs, (_, index) => index === 0);

/** Letters of headings of sheets are 15 pt high, those of a job's title 18 pt, those below 12 pt. */
const headingPt = [14.5, 16] as const;

interface ReadPage {
  readonly text: string;
  /** What is set as large as the heading of a sheet. */
  readonly headings: string;
}

async function readPages(pdf: Uint8Array): Promise<ReadPage[]> {
  const document = await openPdf(pdf);
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const { items } = await (await document.getPage(number)).getTextContent();
    const said = items.flatMap((item) => ('str' in item ? [item] : []));
    const large = said.filter(({ transform }) => {
      const [a, b] = z.array(z.number()).parse(transform);
      const size = Math.hypot(a ?? 0, b ?? 0);
      return size > headingPt[0] && size < headingPt[1];
    });
    pages.push({ text: lettersOf(said), headings: lettersOf(large) });
  }
  return pages;
}

/** The letters alone: a reader of PDF may see a space where a line or a word ends, or none. */
function lettersOf(pieces: readonly { readonly str: string }[]): string {
  return pieces.map(({ str }) => str.replaceAll(/\s/g, '')).join('');
}

/** Letter is 8.5 in wide (ANSI Y14.1); the gauge keeps to the 45 mm at its right edge. */
const letterMm = 215.9;
const marginMm = 45;

/** The gauge measures what it says: its proof line 50 mm, a bar for each strip length, all in the margin. */
async function checkGauge(pdf: Uint8Array, page: number, plan: BuildPlan): Promise<void> {
  const inMargin = (await strokesOf(pdf, page)).filter(
    ({ x1, x2 }) => Math.min(x1, x2) > letterMm - marginMm && Math.max(x1, x2) < letterMm,
  );
  const long = (wantedMm: number, isUpright: boolean): number =>
    inMargin.filter(({ x1, y1, x2, y2 }) => {
      const [along, across] = isUpright ? [y2 - y1, x2 - x1] : [x2 - x1, y2 - y1];
      return Math.abs(Math.abs(along) - wantedMm) < 0.02 && Math.abs(across) < 0.01;
    }).length;
  expect(long(50, true), 'proof line').toBe(1);
  const stripsM = plan.wires
    .filter(({ origin }) => origin === 'job')
    .flatMap(({ ends }) => ends.flatMap(({ stripM }) => (stripM === null ? [] : [stripM])));
  for (const stripM of new Set(stripsM))
    expect(long(stripM * 1000, false), `bar of ${stripM} m`).toBeGreaterThan(0);
}

describe('a printed set', () => {
  let printer: Printer;
  beforeAll(async () => {
    const opened = await openPrinter();
    if ('missing' in opened) throw new Error(opened.missing);
    printer = opened;
  });
  afterAll(() => printer.close());

  it.each(printed.map((job) => [job.plan.job.id, job] as const))(
    '%s has the page of each sheet in its index, as its heading stands there, and every page its number',
    async (_, job) => {
      const pdf = await printedSet(printer, shop, job);
      if (typeof pdf === 'string') throw new Error(pdf);
      const pages = await readPages(pdf);
      const titles = sheetSections(job.plan, 'bench').map(({ title }) => title.replaceAll(' ', ''));
      const cover = pages.find(({ headings }) => headings === 'Cover');
      const index = /Sheets(.*?)Findings/.exec(cover?.text ?? '')?.[1] ?? '';
      let at = 0;
      const told = titles.map((title) => {
        const begin = index.indexOf(title, at);
        at = begin + title.length;
        return begin < 0 ? null : Number(/^\d+/.exec(index.slice(at))?.[0]);
      });
      const found = titles.map((title) => {
        const on = pages.flatMap(({ headings }, page) => (headings === title ? [page + 1] : []));
        return on.length === 1 ? on[0] : null;
      });
      expect(titles.length).toBeGreaterThan(15);
      expect(told).toEqual(found);
      expect(found).not.toContain(null);
      pages.forEach(({ text }, page) => {
        expect(text).toContain(`page${page + 1}of${pages.length}`);
      });
      await checkGauge(pdf, found[titles.indexOf('Terminalsandheat-shrink')] ?? 0, job.plan);
    },
  );

  it('has an index without numbers of pages on screen', () => {
    const [job] = shop.jobs;
    const [page] = job ? jobPages({ site: shop, audience: 'shop' }, job) : [];
    if (!page) throw new Error('There is no demo job.');
    const html = renderPage(page, openTemplates(), () => []);
    expect(html).toContain('<li><a href="#pick-list">Pick list</a></li>');
    expect(html).not.toContain('index-page');
  });
});
