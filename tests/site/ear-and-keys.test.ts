import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { onceEach } from '../../lib/plan/once-each.ts';
import { fileOf } from '../../lib/publish/site/addresses.ts';
import { fixedPlan } from '../boards/fixed-jobs.ts';
import { samplePlan } from '../publish/sample/sample-plan.ts';
import { sampleDrawings, sampleJob, sampleSite } from '../publish/sample/sample-site.ts';
import { accessibleTree, allOf, type Spoken, textOf } from './accessible-tree.ts';
import { openedSite } from './opened-site.ts';

const van = { ...sampleJob(fixedPlan('van-three-amps')), revisions: [] };
const vanPage = `jobs/${van.plan.job.id}/index.html`;
const samplePage = `jobs/${samplePlan().job.id}/index.html`;
const vehiclePage = 'vehicles/sample-estate/index.html';
const ownPages = new Set([vanPage, samplePage, vehiclePage, 'index.html']);

/** What has the focus: what it is, what it is called after, and whether an eye sees that it has the focus. */
const stop = z.object({
  what: z.string(),
  place: z.number(),
  table: z.number(),
  inSight: z.boolean(),
  ringed: z.boolean(),
});

const stopNow = `(() => {
  const one = document.activeElement;
  const box = one.getBoundingClientRect();
  const style = getComputedStyle(one);
  const all = [...document.querySelectorAll('*')];
  const tables = [...document.querySelectorAll('table')];
  return {
    what: one === document.body ? 'end' : one.tagName + ' ' + (one.getAttribute('aria-label') ?? one.textContent.trim()),
    place: all.indexOf(one),
    table: tables.indexOf(one.closest('table')),
    inSight: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
    ringed: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2,
  };
})()`;

/** Presses the tab key from the top of a page until it leaves it. */
async function walk(page: Page): Promise<z.output<typeof stop>[]> {
  const stops: z.output<typeof stop>[] = [];
  for (;;) {
    await page.keyboard.press('Tab');
    const now = stop.parse(await page.evaluate(stopNow));
    if (now.what === 'end' || stops.some(({ place }) => place === now.place)) return stops;
    stops.push(now);
  }
}

describe('a page by ear and by keys', () => {
  const opened = openedSite(sampleSite([van, sampleJob()]), {
    drawingsOf: sampleDrawings,
    only: (address) => ownPages.has(fileOf(address)),
  });

  const open = async (file: string, width: number, javaScriptEnabled = true): Promise<Page> => {
    const { url, browser } = opened();
    const context = await browser.newContext({ viewport: { width, height: 740 }, javaScriptEnabled });
    const page = await context.newPage();
    await page.goto(url + file, { waitUntil: 'load' });
    return page;
  };

  /** The page of the largest job by ear, and the tables that it has as HTML; each look is opened once. */
  const heard = onceEach(
    async ({ width, scripts }: { readonly width: number; readonly scripts: boolean }) => {
      const page = await open(vanPage, width, scripts);
      const tree = await accessibleTree(page);
      const inHtml = z
        .array(z.object({ columns: z.number(), rows: z.number() }))
        .parse(
          await page.evaluate(
            `[...document.querySelectorAll('table')].map((one) => ({ columns: one.tHead.rows[0].cells.length, rows: one.rows.length }))`,
          ),
        );
      await page.context().close();
      return { tree, inHtml };
    },
    JSON.stringify,
  );

  it.each([
    ['at a desk', 1280, true],
    ['on a phone', 390, true],
    ['on a phone without scripts', 390, false],
  ])('tables have a name, and heads of every column and row, %s', async (_, width, scripts) => {
    const { tree, inHtml } = await heard({ width, scripts });
    const tables = allOf(tree, 'table');
    expect(tables.length).toBeGreaterThan(30);
    expect(
      tables.map((one) => ({ columns: allOf(one, 'columnheader').length, rows: allOf(one, 'row').length })),
    ).toEqual(inHtml);
    const rowless = tables.flatMap((one) => {
      const [, ...rows] = allOf(one, 'row');
      return rows.filter((row) => allOf(row, 'rowheader').length !== 1 || textOf(row) === '');
    });
    expect(rowless.map(textOf)).toEqual([]);
    expect(tables.filter(({ name }) => name === '')).toEqual([]);
  });

  it('nothing is read out a thousand times, and nothing that is read has no name', async () => {
    const { tree } = await heard({ width: 390, scripts: true });
    const marks = allOf(tree, 'image', 'img', 'graphics-document', 'checkbox', 'region', 'navigation');
    const times = (name: string): number => marks.filter((one) => one.name === name).length;
    expect(marks.filter(({ name }) => times(name) > 3).map(({ name }) => name)).toEqual([]);
    expect(marks.map(({ name }) => name)).not.toContain('');
    const named = allOf(tree, 'link', 'button', 'heading', 'listitem', 'term');
    expect(named.filter((one) => one.name.trim() === '' && textOf(one) === '')).toEqual([]);
  });

  it('the way to a page has no empty crumb, and no sign after the last', async () => {
    for (const file of [samplePage, vehiclePage, 'index.html']) {
      const page = await open(file, 390);
      const tree = await accessibleTree(page);
      const trails = allOf(tree, 'navigation').filter(({ name }) => name === 'Where you are');
      const crumbs = trails.flatMap((trail) => allOf(trail, 'listitem'));
      expect(trails, file).toHaveLength(file === 'index.html' ? 0 : 1);
      // A sign between two crumbs is for the eye: it is not read, and none follows the last.
      expect(crumbs.map(textOf), file).toEqual(crumbs.flatMap((crumb) => allOf(crumb, 'link')).map(textOf));
      expect(crumbs.map(textOf), file).not.toContain('');
      const last = `(() => { const [one] = [...document.querySelectorAll('.trail li')].slice(-1); return one ? getComputedStyle(one, '::after').content : 'none'; })()`;
      expect(await page.evaluate(last)).toBe('none');
      await page.context().close();
    }
  });

  it('the sheets of a job are headings of one level below its title, each a region of that name', async () => {
    const page = await open(samplePage, 390);
    const tree = await accessibleTree(page);
    const regions: readonly Spoken[] = allOf(tree, 'region');
    const sheets = z
      .array(z.string())
      .parse(
        await page.evaluate(
          `[...document.querySelectorAll('.sheet > h2')].map((one) => one.textContent.trim())`,
        ),
      );
    expect(sheets.length).toBeGreaterThan(5);
    for (const title of sheets)
      expect(
        regions.filter(({ name }) => name === title),
        title,
      ).toHaveLength(1);
    await page.context().close();
  });

  it.each([1280, 390])(
    'the tab key goes through a job in its order and out again, at %d px',
    async (width) => {
      const page = await open(samplePage, width);
      // A drawing that took its frame's place under way would move the places of all that stands behind it.
      await page.evaluate("for (const one of document.querySelectorAll('iframe')) one.loading = 'eager'");
      await expect.poll(() => page.locator('iframe').count()).toBe(0);
      const stops = await walk(page);
      expect(stops[0]?.what).toBe('A Skip to the content');
      expect(stops.length).toBeGreaterThan(20);
      const places = stops.map(({ place }) => place);
      expect(places).toEqual([...places].sort((a, b) => a - b));
      expect(stops.filter(({ inSight }) => !inSight).map(({ what }) => what)).toEqual([]);
      expect(stops.filter(({ ringed }) => !ringed).map(({ what }) => what)).toEqual([]);
      expect(stops.filter(({ what }) => /^\w+$/.test(what))).toEqual([]);
      // One stop a table at most: a row is gone to by the arrow keys from there.
      const rows = stops.filter(({ table, what }) => table >= 0 && what.startsWith('BUTTON'));
      expect(new Set(rows.map(({ table }) => table)).size).toBe(rows.length);
      await page.context().close();
    },
  );

  it('arrow keys go from row to row of a card as of a line', async () => {
    const page = await open(samplePage, 390);
    const table = page.locator('.sheet table:has(tr:nth-of-type(3) button.pin)').first();
    const pins = table.locator('button.pin');
    await pins.first().focus();
    await page.keyboard.press('ArrowDown');
    expect(await pins.nth(1).evaluate((one) => one === one.ownerDocument.activeElement)).toBe(true);
    await page.keyboard.press('Home');
    expect(await pins.first().evaluate((one) => one === one.ownerDocument.activeElement)).toBe(true);
    await page.context().close();
  });
});
