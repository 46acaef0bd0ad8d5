import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { pdfOptions } from '../../lib/export/print/print-pdf.ts';
import type { DrawingsOf } from '../../lib/publish/site/shop-site.ts';
import { fixedPlan } from '../boards/fixed-jobs.ts';
import { sampleDrawings, sampleJob, sampleSite } from '../publish/sample/sample-site.ts';
import { openedSite } from './opened-site.ts';
import { complaintsOf } from './page-checks.ts';
import { readPrinted } from './print-marks.ts';

const plan = fixedPlan('van-three-amps');
const job = `jobs/${plan.job.id}/index.html`;
const fuse = plan.power.fuses[0]?.id ?? '';

/** The sample's drawings, and one with a hair of a line over a face. */
const drawingsOf: DrawingsOf = (of) => [
  ...sampleDrawings(of),
  {
    sheet: 'conductor-table',
    id: 'hair',
    title: 'A hair',
    svg: [
      '<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="hair" width="180mm" height="400mm" viewBox="0 0 180 400">',
      '<title id="hair">A hair</title>',
      '<g data-of="board"><rect width="180" height="400" fill="#eee"/></g>',
      `<g data-of="${fuse}"><path d="M10 50H170" fill="none" stroke="#000" stroke-width="0.1"/></g>`,
      '<text x="10" y="390" font-size="6">foot of the hair</text></svg>',
    ].join(''),
  },
];

const own = new Set(['/', `/jobs/${plan.job.id}/`, '/search/']);
const opened = openedSite(sampleSite([{ ...sampleJob(plan), revisions: [] }]), {
  drawingsOf,
  only: (address) => own.has(address),
});

const open = async (options: BrowserContextOptions = {}): Promise<Page> => {
  const { url, browser } = opened();
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const page = await context.newPage();
  await page.goto(url + job, { waitUntil: 'load' });
  return page;
};

describe('the ways into a job', () => {
  const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
  /** What stands on the first screen of a phone. */
  let firstScreen: Page;
  beforeAll(async () => {
    firstScreen = await open(phone);
  });
  afterAll(() => firstScreen?.context().close());

  it('tell the fuse of every amplifier on the first screen of a phone', async () => {
    const page = firstScreen;
    const amplifiers = plan.items.filter(({ kind, origin }) => kind === 'amplifier' && origin === 'job');
    expect(amplifiers.length).toBe(3);
    for (const { id } of amplifiers) {
      const [own] = plan.power.fuses
        .filter(({ loads }) => loads.includes(id))
        .sort((a, b) => a.loads.length - b.loads.length);
      const line = page.locator(`#quick-view [data-of="${own?.id}"]`);
      const box = await line.boundingBox();
      expect(await line.textContent(), id).toContain(`${own?.ratingA} A`);
      expect((box?.y ?? 844) + (box?.height ?? 0), id).toBeLessThanOrEqual(844);
    }
  });

  it('tell everything else of the quick view one tap from there, still on one screen', async () => {
    const page = firstScreen;
    const parts = page.locator('#quick-view summary');
    expect(await parts.allTextContents()).toEqual([
      'Fuses',
      'Torques',
      'Presets before first power',
      'Gains',
      'Measure next',
    ]);
    for (const part of await parts.all()) {
      const box = await part.boundingBox();
      expect((box?.y ?? 844) + (box?.height ?? 0)).toBeLessThanOrEqual(844);
    }
    await parts.nth(3).click();
    expect(await page.locator('#quick-view details[open]').count()).toBe(1);
    expect(await page.locator('#quick-view details[open]').textContent()).toMatch(/\d V at/);
  });

  it('begin with the name of the shop and the menu in one line', async () => {
    const page = firstScreen;
    await page.evaluate("document.querySelector('.shop a').textContent = 'Slate Yard Mobile Audio'");
    const [name, menu] = await Promise.all(
      ['.shop', '.menu-button'].map((one) => page.locator(one).boundingBox()),
    );
    expect(menu?.y ?? 844).toBeLessThan((name?.y ?? 0) + (name?.height ?? 0));
  });

  it('print the quick view as one card, alone where that is asked for', async () => {
    const page = await open({ ...phone, javaScriptEnabled: false });
    const [first] = await readPrinted(await page.pdf({ ...pdfOptions, pageRanges: '1' }));
    for (const word of ['Torques', 'Gains', 'Measure next', `${plan.power.fuses[0]?.ratingA} A`])
      expect(first?.text.replaceAll(/\s/g, '')).toContain(word.replaceAll(' ', ''));
    expect(first?.text).not.toContain('Survey');
    await page.context().close();
    const alone = await open(phone);
    await alone.evaluate("document.body.classList.add('card-alone')");
    const pages = await readPrinted(await alone.pdf(pdfOptions));
    expect(pages.map(({ text }) => text.trim() !== '')).toEqual([true]);
    await alone.context().close();
  });

  it('keep the contents in sight, mark the sheet, and lead to the next, the one before and the last', async () => {
    const page = await open(phone);
    const here = page.locator('.here');
    expect(await here.textContent()).toBe('Quick view');
    await page.locator('.to-next').click();
    await expect.poll(() => here.textContent()).toBe('Cover');
    await here.click();
    await page.locator('#contents a', { hasText: 'Wire cut list' }).click();
    expect(await page.locator('#contents').isVisible()).toBe(false);
    await expect.poll(() => here.textContent()).toBe('Wire cut list');
    const box = await here.boundingBox();
    expect(box?.y).toBeLessThan(40);
    expect(await page.locator('#contents a[aria-current]').textContent()).toBe('Wire cut list');
    expect(await page.locator('.to-before').getAttribute('aria-label')).toMatch(/^Sheet before: ./);
    await page.goto(opened().url, { waitUntil: 'load' });
    await page.goto(opened().url + job, { waitUntil: 'load' });
    expect(await page.locator('.last-sheet a').getAttribute('href')).toBe('#wire-list');
    await page.context().close();
  });

  it('lead from sheet to sheet without scripts as well', async () => {
    const page = await open({ ...phone, javaScriptEnabled: false });
    await page.locator('#cover a[rel="next"]').click();
    expect(page.url()).toContain('#survey');
    await page.locator('.here').click();
    expect(await page.locator('#contents').isVisible()).toBe(true);
    await page.context().close();
  });

  it.each([
    ['a phone', phone],
    ['a desk', {}],
  ])('go to the search by a key from %s', async (_, options) => {
    const page = await open(options);
    await page.keyboard.press('Control+k');
    await page.keyboard.type('amplifier');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/search\/index\.html\?q=amplifier$/);
    await page.context().close();
  });

  it('put tables or drawings first in the page itself, as it was chosen last', async () => {
    const page = await open();
    const first = () =>
      page
        .locator('#power-diagram > :is(.table-wrap, .drawing)')
        .first()
        .evaluate((one) => one.className.split(' ')[0]);
    expect(await first()).toBe('table-wrap');
    await page.getByRole('button', { name: 'Drawings first' }).click();
    expect(await first()).toBe('drawing');
    await page.reload({ waitUntil: 'load' });
    expect(await first()).toBe('drawing');
    await page.context().close();
  });
});

describe('drawings that are files of their own', () => {
  const number = async (page: Page, script: string) => z.number().parse(await page.evaluate(script));
  /** Brings a drawing near and waits until it stands in the page. */
  const drawn = async (page: Page, sheet: string) => {
    const drawing = page.locator(`#${sheet} .drawing`).first();
    await drawing.scrollIntoViewIfNeeded();
    await drawing.locator('svg').waitFor();
    return drawing;
  };
  const far = "document.querySelectorAll('.drawing iframe:not([hidden])').length";

  it('come when they are near, and without a complaint', async () => {
    const { url, browser } = opened();
    const page = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
    const complaints = complaintsOf(page);
    await page.goto(url + job, { waitUntil: 'load' });
    expect(await number(page, far)).toBeGreaterThan(0);
    const drawing = await drawn(page, 'power-diagram');
    await expect.poll(() => drawing.locator('iframe').count()).toBe(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it.each([true, false])('are printed all the same, scripts %s', async (javaScriptEnabled) => {
    const page = await open({ javaScriptEnabled });
    const pages = await readPrinted(await page.pdf(pdfOptions));
    expect(pages.some(({ text }) => text.includes('foot of the hair'))).toBe(true);
    await page.context().close();
  });

  it('show the whole of themselves when asked, in the window', async () => {
    const page = await open();
    const drawing = await drawn(page, 'conductor-table');
    await drawing.getByRole('button', { name: 'Whole' }).click();
    const frame = await drawing.locator('.drawing-wrap').boundingBox();
    const svg = await drawing.locator('svg').boundingBox();
    if (!frame || !svg) throw new Error('the drawing has no room on the page');
    expect(svg.height).toBeLessThanOrEqual(frame.height);
    expect(svg.width).toBeLessThanOrEqual(frame.width);
    expect(svg.width / svg.height).toBeCloseTo(180 / 400, 2);
    expect(svg.y).toBeGreaterThanOrEqual(0);
    expect(svg.y + svg.height).toBeLessThanOrEqual(800);
    await page.context().close();
  });

  it('let the wheel go on through the page, and come nearer with the control key', async () => {
    const page = await open();
    const drawing = await drawn(page, 'conductor-table');
    await drawing.getByRole('button', { name: 'Larger' }).click();
    await drawing.locator('.drawing-wrap').hover();
    const [down, inside] = [
      'window.scrollY',
      "document.querySelector('#conductor-table .drawing-wrap').scrollTop",
    ];
    const [downBefore, insideBefore] = [await number(page, down), await number(page, inside)];
    await page.mouse.wheel(0, 200);
    await expect.poll(() => number(page, down)).toBeGreaterThan(downBefore);
    expect(await number(page, inside)).toBe(insideBefore);
    const zoom = async () => Number(await drawing.getAttribute('data-zoom'));
    const zoomBefore = await zoom();
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -100);
    await page.keyboard.up('Control');
    await expect.poll(zoom).toBeGreaterThan(zoomBefore);
    await page.context().close();
  });

  it('let a thin line be hit beside itself, name what is pinned, and leave the face to who points at it', async () => {
    const page = await open();
    const drawing = await drawn(page, 'conductor-table');
    const line = await drawing.locator(`[data-of="${fuse}"] path:not(.reach)`).boundingBox();
    if (!line) throw new Error('the line has no place');
    const bar = page.getByRole('region', { name: 'Pinned' });
    await page.mouse.click(line.x + line.width / 2, line.y + 5);
    expect(await bar.textContent()).toContain(fuse);
    expect(await bar.textContent()).toMatch(/in \d+ drawings? and \d+ tables?/);
    await page.keyboard.press('Escape');
    expect(await bar.isVisible()).toBe(false);
    await page.mouse.click(line.x + line.width / 2, line.y + 30);
    expect(await bar.textContent()).toContain('board');
    await page.context().close();
  });
});
