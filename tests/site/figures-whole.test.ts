import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { casesOf, isDrawn, isLongRun } from '../long-run.ts';
import { sampleSite } from '../publish/sample/sample-site.ts';
import { siteInFolder } from '../shops/site-in-folder.ts';
import { openedSite } from './opened-site.ts';
import { lookAtTables } from './tables-in-sight.ts';

/**
 * Widths of a window that are looked at, CSS pixels. Zoom halves them: 640 is 1,280 at 200 %, 160 is 320 at 200 %; 390
 * and 768 at 200 % lie between two of these. Colours move nothing, so that each scheme is looked at in every second one:
 * one after the other, since a change of colours makes a browser draw all of a page anew.
 */
const looks = [
  { width: 1280, scheme: 'light', zoomed: false },
  { width: 640, scheme: 'light', zoomed: true },
  { width: 320, scheme: 'light', zoomed: false },
  { width: 160, scheme: 'dark', zoomed: true },
  { width: 390, scheme: 'dark', zoomed: false },
  { width: 768, scheme: 'dark', zoomed: false },
] as const;

/** The narrowest of lines and the narrowest of cards. */
const narrowest = looks.filter(({ width }) => width === 768 || width === 320);

/** Below this width of the window rows are cards. */
const cardsBelowPx = 600;

const demo = await siteInFolder(fileURLToPath(new URL('../../', import.meta.url)));

const isOfJob = (file: string): boolean => /^jobs\/./.test(file) && file !== 'jobs/index.html';

const isFirst = (_: string, index: number): boolean => index === 0;

/**
 * Files with the widths at which each is looked at: all in the long run. In the short one the first job's page and a
 * worksheet, which hold a table of nearly every make, are seen at all of them; a page of each other template, and a third
 * of the pages of further jobs and revisions, where tables are narrowest.
 */
function looksAt(files: readonly string[]): (readonly [string, readonly (typeof looks)[number][]])[] {
  const isWhole = (file: string, _: number, all: readonly string[]): boolean =>
    file === all.find(isOfJob) || file === all.find((one) => one.endsWith('/worksheet/index.html'));
  const whole = new Set(casesOf(files, isWhole));
  const further = files.filter((file) => isOfJob(file) && !whole.has(file));
  const left = new Set(further.filter((_, index) => !isDrawn(index, { oneIn: 3 })));
  return files.filter((file) => !left.has(file)).map((file) => [file, whole.has(file) ? looks : narrowest]);
}

async function setWidth(page: Page, width: number): Promise<void> {
  await page.setViewportSize({ width, height: 740 });
  // What scrolls says so once it was measured, in the frame after.
  await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))');
}

/** Tables that are looked at: in the short run those of both sites, such as of the writing guide, once. */
const seen = new Set<string>();

describe.each([
  { name: 'the demo site', site: demo, leastTables: isLongRun ? 300 : 100 },
  { name: 'the sample site', site: sampleSite(), leastTables: isLongRun ? 40 : 20 },
])('tables of $name', ({ site, leastTables }) => {
  const opened = openedSite(site, isLongRun ? {} : { seen });

  it('have every figure whole and in sight at every width, by day and by night', async () => {
    const { url, browser, files } = opened();
    const page = await browser.newPage();
    let tables = 0;
    for (const [file, widths] of looksAt(files)) {
      await page.goto(url + file, { waitUntil: 'load' });
      for (const { width, scheme, zoomed } of widths) {
        await page.emulateMedia({ colorScheme: scheme });
        await setWidth(page, width);
        const seen = await lookAtTables(page);
        const where = `${file} at ${width} px`;
        expect(seen.cut, where).toEqual([]);
        expect(seen.broken, where).toEqual([]);
        if (!zoomed) expect(seen.scrolling, where).toEqual([]);
        if (width < cardsBelowPx) expect(seen.notCards, where).toEqual([]);
        expect(seen.late, where).toEqual([]);
        expect(seen.unnamed, where).toEqual([]);
        tables += width === 320 ? seen.tables : 0;
      }
    }
    expect(tables).toBeGreaterThanOrEqual(leastTables);
    await page.close();
  });

  it('keep them when letters alone are set twice as large', async () => {
    const { url, browser, files } = opened();
    const page = await browser.newPage();
    for (const file of casesOf(files.filter(isOfJob), isFirst)) {
      await page.goto(url + file, { waitUntil: 'load' });
      await page.evaluate("document.documentElement.style.fontSize = '200%'");
      await setWidth(page, 1280);
      const seen = await lookAtTables(page);
      expect([...seen.cut, ...seen.broken, ...seen.scrolling], file).toEqual([]);
    }
    await page.close();
  });
});

describe('the look at tables', () => {
  const opened = openedSite({ ...sampleSite(), jobs: [] }, { only: (address) => address === '/' });

  const row = (cells: string): string =>
    `<div class="table-wrap"><table style="--c2:'Rating'"><caption>Fuses</caption>` +
    `<thead><tr><th scope="col">Fuse</th><th scope="col">Rating</th></tr></thead><tbody><tr>${cells}</tr></tbody></table></div>`;

  /** A page of the site, with its styles and scripts, that holds one table alone. */
  const openWith = async (html: string, width: number, javaScriptEnabled = true): Promise<Page> => {
    const { url, browser } = opened();
    const context = await browser.newContext({
      javaScriptEnabled,
      viewport: { width, height: 740 },
      bypassCSP: true,
    });
    const page = await context.newPage();
    await page.route('**/index.html', async (route) => {
      const response = await route.fetch();
      const body = await response.text();
      await route.fulfill({
        response,
        body: body.replace(
          /<main[\s\S]*<\/main>/,
          `<main id="main" style="margin-bottom: 3rem">${html}</main>`,
        ),
      });
    });
    await page.goto(`${url}index.html`, { waitUntil: 'load' });
    if (javaScriptEnabled) await setWidth(page, width);
    return page;
  };
  const longName = 'a_name_of_a_fuse'.repeat(4);

  it('finds a figure behind a frame that says nothing', async () => {
    const page = await openWith(row(`<th scope="row">F</th><td>${longName} 200 A</td>`), 320, false);
    expect((await lookAtTables(page)).cut.length).toBeGreaterThan(0);
    await page.context().close();
  });

  it('lets a table scroll that says so, by words and to the keyboard', async () => {
    const page = await openWith(row(`<th scope="row">F</th><td>${longName} 200 A</td>`), 320);
    const seen = await lookAtTables(page);
    expect(seen.cut).toEqual([]);
    expect(seen.scrolling).toEqual(['Fuses']);
    const region = page.getByRole('region', { name: 'Fuses' });
    await region.focus();
    await page.keyboard.press('End');
    await page.keyboard.press('ArrowRight');
    await expect
      .poll(async () => Number(await page.evaluate("document.querySelector('.table-wrap').scrollLeft")))
      .toBeGreaterThan(0);
    await setWidth(page, 1280);
    expect(await page.getByRole('region', { name: 'Fuses' }).count()).toBe(0);
    await page.context().close();
  });

  it('finds a number that is continued on the next line', async () => {
    const page = await openWith(
      row('<th scope="row">F</th><td style="width: 3ch; overflow-wrap: anywhere">123456</td>'),
      320,
    );
    expect((await lookAtTables(page)).broken).toHaveLength(1);
    await page.context().close();
  });

  it('finds a card that begins with something else, and a value without its name', async () => {
    const page = await openWith(
      row('<th scope="row">F</th><td class="leads" style="order: 5">200 A</td><td>loose</td>'),
      320,
    );
    const seen = await lookAtTables(page);
    expect(new Set(seen.late)).toEqual(new Set(['Fuses: 200 A']));
    expect(seen.unnamed).toEqual(['Fuses: loose']);
    await page.context().close();
  });

  it.each(['light', 'dark'] as const)(
    'sees the shade at the edge that hides more, %s, without scripts',
    async (scheme) => {
      const { url, browser } = opened();
      const context = await browser.newContext({
        javaScriptEnabled: false,
        bypassCSP: true,
        viewport: { width: 320, height: 740 },
        colorScheme: scheme,
      });
      const page = await context.newPage();
      await page.goto(`${url}index.html`, { waitUntil: 'load' });
      const wide = `<div class="table-wrap"><div style="width: 900px; height: 60px"></div></div>`;
      await page.evaluate(`document.querySelector('main').innerHTML = ${JSON.stringify(wide)}`);
      const edges = async (): Promise<readonly [number, number]> => {
        const box = z
          .object({ x: z.number(), y: z.number(), width: z.number(), height: z.number() })
          .parse(await page.locator('.table-wrap').boundingBox());
        const { data, info } = await sharp(await page.screenshot({ clip: box }))
          .greyscale()
          .raw()
          .toBuffer({ resolveWithObject: true });
        const at = (x: number): number =>
          data[(Math.floor(info.height / 2) * info.width + x) * info.channels] ?? 0;
        const middle = at(Math.floor(info.width / 2));
        return [Math.abs(at(1) - middle), Math.abs(at(info.width - 2) - middle)];
      };
      const [leftBefore, rightBefore] = await edges();
      expect(leftBefore).toBeLessThan(8);
      expect(rightBefore).toBeGreaterThan(40);
      await page.evaluate("document.querySelector('.table-wrap').scrollLeft = 9999");
      const [leftAfter, rightAfter] = await edges();
      expect(leftAfter).toBeGreaterThan(40);
      expect(rightAfter).toBeLessThan(8);
      await context.close();
    },
  );
});
