import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import { sheetSections } from '../../lib/publish/page/sheet-sections.ts';
import { fileOf } from '../../lib/publish/site/addresses.ts';
import { buildSite } from '../../lib/publish/site/build-site.ts';
import type { DrawingsOf, PublishedJob, ShopSite } from '../../lib/publish/site/shop-site.ts';
import { sitePages } from '../../lib/publish/site/site-pages.ts';
import { openBrowser } from '../browser.ts';
import { testCrew } from '../shops/test-crew.ts';
import { type StaticServer, serveFolder } from '../static-server.ts';
import {
  accessibilityFaults,
  complaintsOf,
  faultsOfLooks,
  headingLevels,
  overhangPx,
  smallTargets,
} from './page-checks.ts';
import { touchOf } from './touch.ts';

export interface SiteUnderTest {
  readonly name: string;
  readonly site: ShopSite;
  readonly drawingsOf: DrawingsOf;
  /** The jobs whose pages are looked at from top to foot. */
  readonly lookedAt: readonly PublishedJob[];
  /** Templates whose pages tell nothing of this shop, and are looked at elsewhere. */
  readonly lookedAtElsewhere?: ReadonlySet<string>;
  /** True where another site, which has the same scripts, is used by keys, wheel, fingers and pointer. */
  readonly usedElsewhere?: boolean;
}

/** One page of each template, and those of the jobs that are looked at. */
function pagesToLookAt({ site, lookedAt, lookedAtElsewhere }: SiteUnderTest): string[] {
  const jobs = new Set(lookedAt.map(({ plan }) => `/jobs/${plan.job.id}/`));
  const seen = new Set(lookedAtElsewhere);
  return sitePages({ site, audience: 'bench' })
    .filter(({ template, address }) => {
      const isNew = !seen.has(template);
      seen.add(template);
      return isNew || jobs.has(address);
    })
    .map(({ address }) => fileOf(address));
}

/** Titles of the parts that a job puts in. */
function partTitles({ items }: BuildPlan): ReadonlySet<string> {
  return new Set(items.filter(({ origin }) => origin === 'job').map(({ partTitle }) => partTitle));
}

/** The name that occurs least often: the one that narrows most. */
function rarest(names: readonly string[]): string {
  const count = (name: string): number => names.filter((one) => one === name).length;
  return [...new Set(names)].sort((a, b) => count(a) - count(b))[0] ?? '';
}

/** The window of the first drawing of a page, in sight, with the drawing itself in it instead of its frame. */
async function firstDrawing(page: Page): Promise<Locator> {
  const drawing = page.locator('.drawing').first();
  const frame = drawing.locator('.drawing-wrap');
  await frame.scrollIntoViewIfNeeded();
  await expect.poll(() => drawing.locator('iframe').count()).toBe(0);
  await expect.poll(() => drawing.getAttribute('data-zoom')).not.toBeNull();
  await frame.scrollIntoViewIfNeeded();
  return frame;
}

/**
 * Chooses in a filter of the search page, and waits until so many pages are found: those that were listed before are
 * marked, so that they do not pass for the answer.
 */
async function chooseIn(page: Page, filter: string, value: string, count: number): Promise<void> {
  await page.evaluate(
    "for (const one of document.querySelectorAll('#search-results li')) one.dataset.before = 'yes'",
  );
  await page.locator(`#find-${filter}`).selectOption({ value });
  const listed = async (): Promise<readonly number[]> => [
    await page.locator('#search-results li[data-before]').count(),
    await page.locator('#search-results li').count(),
  ];
  await expect.poll(listed, { message: `${filter}: ${value}` }).toEqual([0, count]);
}

/** Opens every kind of page of a built site in a real browser, as a reader with each kind of device would. */
export function describeSite(tested: SiteUnderTest): void {
  const { name, site, drawingsOf, lookedAt } = tested;
  describe(`the site of ${name} in a browser`, () => {
    let root = '';
    let server: StaticServer;
    let browser: Browser;
    let context: BrowserContext;
    beforeAll(async () => {
      root = await mkdtemp(join(tmpdir(), 'rackleaf-site-'));
      const { folder } = await buildSite(site, { root, drawingsOf, keepStep: testCrew().keep });
      server = await serveFolder(folder, '/some/base/');
      browser = await openBrowser();
      context = await browser.newContext();
    });
    afterAll(async () => {
      await browser?.close();
      await server?.close();
      await rm(root, { recursive: true, force: true });
    });

    /** The page of the first job. */
    const openJob = async (): Promise<Page> => {
      const page = await context.newPage();
      await page.goto(`${server.url}jobs/${site.jobs[0]?.plan.job.id}/index.html`, {
        waitUntil: 'networkidle',
      });
      return page;
    };

    it.each(pagesToLookAt(tested))('%s is sound on a desk, on a phone and in the dark', async (file) => {
      const page = await context.newPage();
      const complaints = complaintsOf(page);
      await page.goto(server.url + file, { waitUntil: 'load' });
      // What comes later, drawings and the index of the search, is waited for where there is any.
      if ((await page.locator('iframe, #find-words').count()) > 0) await page.waitForLoadState('networkidle');
      expect(await accessibilityFaults(page)).toEqual([]);
      await page.setViewportSize({ width: 375, height: 740 });
      expect(await overhangPx(page)).toBe(0);
      expect(await smallTargets(page)).toEqual([]);
      await page.setViewportSize({ width: 320, height: 740 });
      expect(await overhangPx(page)).toBe(0);
      await page.emulateMedia({ colorScheme: 'dark' });
      expect(await faultsOfLooks(page)).toEqual([]);
      const levels = await headingLevels(page);
      expect(levels[0]).toBe(1);
      expect(levels.slice(1).filter((level, index) => level > (levels[index] ?? 0) + 1)).toEqual([]);
      await page.waitForLoadState('networkidle');
      expect(complaints).toEqual([]);
      await page.close();
    });

    it.each(site.jobs.map(({ plan }) => plan.job))('search returns the job $id', async ({ id, title }) => {
      const page = await context.newPage();
      await page.goto(`${server.url}search/index.html?q=${encodeURIComponent(title)}&kind=Job`);
      const links = page.locator('#search-results a');
      await links.first().waitFor();
      expect(await page.locator('#search-status').textContent()).toMatch(/\d+ pages? found\./);
      const hrefs = await links.evaluateAll((all) => all.map((one) => one.getAttribute('href')));
      expect(hrefs).toContain(`../jobs/${id}/index.html`);
      await page.close();
    });

    it('search narrows by each filter, and the keyboard alone reaches the job', async () => {
      const jobs = site.jobs.map(({ plan }) => plan);
      const [first] = jobs;
      const page = await context.newPage();
      const complaints = complaintsOf(page);
      await page.goto(`${server.url}search/index.html`);
      await page.locator('#find-words').waitFor();
      await page.locator('.find-more summary').click();
      await chooseIn(page, 'kind', 'Job', jobs.length);
      const vehicle = first?.vehicle.title ?? '';
      const ofVehicle = jobs.filter((plan) => plan.vehicle.title === vehicle);
      await chooseIn(page, 'vehicle', vehicle, ofVehicle.length);
      await chooseIn(page, 'vehicle', '', jobs.length);
      const part = rarest(jobs.flatMap((plan) => [...partTitles(plan)]));
      await chooseIn(page, 'part', part, jobs.filter((plan) => partTitles(plan).has(part)).length);
      await chooseIn(page, 'part', '', jobs.length);
      const sizesOf = ({ wires }: BuildPlan): ReadonlySet<string> =>
        new Set(
          wires
            .filter(({ origin, role }) => origin === 'job' && role === 'power')
            .map(({ size }) => size.label),
        );
      const size = rarest(jobs.flatMap((plan) => [...sizesOf(plan)]));
      await chooseIn(page, 'wire-size', size, jobs.filter((plan) => sizesOf(plan).has(size)).length);
      await page.locator('#find-year').focus();
      await page.keyboard.press('Tab');
      expect(await page.evaluate('document.activeElement.closest("#search-results") !== null')).toBe(true);
      await page.keyboard.press('Enter');
      await page.waitForURL(/\/jobs\/[^/]+\/index\.html$/);
      expect(complaints).toEqual([]);
      await page.close();
    });

    it('without scripts every job is found in the plain index and every sheet can be read', async () => {
      const plain = await browser.newContext({ javaScriptEnabled: false });
      const page = await plain.newPage();
      await page.goto(`${server.url}search/index.html`);
      for (const { plan } of site.jobs)
        expect(await page.locator(`a[href="../jobs/${plan.job.id}/index.html"]`).count()).toBe(1);
      expect(await page.locator('#search-note').isVisible()).toBe(true);
      for (const { plan } of lookedAt) {
        await page.goto(`${server.url}jobs/${plan.job.id}/index.html`);
        for (const { id } of sheetSections(plan, 'bench'))
          expect(await page.locator(`#${id}`).isVisible(), `${plan.job.id} ${id}`).toBe(true);
        const frames = page.locator('.drawing iframe');
        expect(await frames.count()).toBe(drawingsOf(plan).length);
        for (const frame of await frames.all()) {
          expect((await frame.boundingBox())?.width).toBeGreaterThan(300);
          expect(await frame.contentFrame().locator('svg > title').count()).toBe(1);
        }
      }
      await plain.close();
    });

    if (tested.usedElsewhere) return;

    it('the first key leads past the navigation to the content, with the focus in sight', async () => {
      const page = await context.newPage();
      await page.goto(server.url);
      await page.keyboard.press('Tab');
      expect(await page.evaluate('document.activeElement.className')).toBe('skip');
      expect(await page.evaluate('getComputedStyle(document.activeElement).outlineStyle')).toBe('solid');
      await page.keyboard.press('Enter');
      expect(await page.evaluate('location.hash + document.activeElement.id')).toBe('#mainmain');
      await page.close();
    });

    it('drawings zoom by keys, by buttons and by the wheel, and keep the point that is looked at', async () => {
      const page = await openJob();
      const frame = await firstDrawing(page);
      const zoom = async () => Number(await page.locator('.drawing').first().getAttribute('data-zoom'));
      await frame.focus();
      await page.keyboard.press('0');
      const whole = await zoom();
      expect(whole).toBeLessThanOrEqual(1);
      await page.keyboard.press('+');
      await page.keyboard.press('+');
      await page.keyboard.press('+');
      expect(await zoom()).toBeCloseTo(whole * 1.5 ** 3, 1);
      expect(await page.locator('#sheet-status').textContent()).toBe(
        `Zoom ${Math.round((await zoom()) * 100)} %`,
      );
      const left = "document.querySelector('.drawing-wrap').scrollLeft";
      const before = Number(await page.evaluate(left));
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => page.evaluate(left)).toBeGreaterThan(before);
      await page.locator('.drawing-tools button', { hasText: 'Whole' }).first().click();
      expect(await zoom()).toBe(whole);
      await frame.scrollIntoViewIfNeeded();
      await frame.hover();
      await page.keyboard.down('Control');
      await page.mouse.wheel(0, -300);
      await page.keyboard.up('Control');
      await expect.poll(zoom).toBeGreaterThan(whole * 2);
      await page.close();
    });

    it('drawings zoom under two fingers about the point between them, and one finger moves them', async () => {
      const phone = await browser.newContext({
        viewport: { width: 390, height: 800 },
        hasTouch: true,
        isMobile: true,
      });
      const page = await phone.newPage();
      await page.goto(`${server.url}jobs/${site.jobs[0]?.plan.job.id}/index.html`, {
        waitUntil: 'networkidle',
      });
      const frame = await firstDrawing(page);
      const box = await frame.boundingBox();
      if (!box) throw new Error('the drawing has no room on the page');
      const [x, y] = [box.x + box.width / 2, box.y + Math.min(box.height, 300) / 2];
      const touch = await touchOf(phone, page);
      const zoom = async () => Number(await page.locator('.drawing').first().getAttribute('data-zoom'));
      const frameOf = `document.querySelector('.drawing-wrap')`;
      // What of the drawing lies between the fingers, as a share of its width.
      const share = async () =>
        Number(await page.evaluate(`(${frameOf}.scrollLeft + ${box.width / 2}) / ${frameOf}.scrollWidth`));
      const [zoomBefore, shareBefore] = [await zoom(), await share()];
      await touch.start([x - 40, y], [x + 40, y]);
      for (const apart of [50, 60, 70, 80]) await touch.move([x - apart, y], [x + apart, y]);
      await touch.end();
      expect((await zoom()) / zoomBefore).toBeCloseTo(2, 1);
      expect(await share()).toBeCloseTo(shareBefore, 1);
      expect(Number(await page.evaluate('visualViewport.scale')), 'the page itself stays').toBe(1);
      const before = Number(await page.evaluate(`${frameOf}.scrollLeft`));
      await touch.start([x + 60, y]);
      for (const moved of [40, 20, 0, -20, -40, -60]) await touch.move([x + moved, y]);
      await touch.end();
      await expect
        .poll(async () => Number(await page.evaluate(`${frameOf}.scrollLeft`)))
        .toBeGreaterThan(before + 60);
      await touch.start([x - 80, y], [x + 80, y]);
      for (const apart of [60, 40]) await touch.move([x - apart, y], [x + apart, y]);
      await touch.end();
      expect(await zoom()).toBeCloseTo(zoomBefore, 1);
      await phone.close();
    });

    it('a row can be pinned by keys: the same thing is lit wherever it stands, until Escape', async () => {
      const page = await openJob();
      const row = page.locator('.sheet tr[data-of]:has(button.pin)').first();
      const subject = await row.getAttribute('data-of');
      const all = page.locator(`.sheet [data-of="${subject}"]`);
      await row.locator('button.pin').focus();
      await page.keyboard.press('Enter');
      // What is pinned is looked for in every drawing: all of them come.
      await expect.poll(() => page.locator('.drawing iframe').count()).toBe(0);
      expect(await all.count()).toBeGreaterThan(0);
      expect(await page.locator('.lit').count()).toBe(await all.count());
      expect(await page.getByRole('region', { name: 'Pinned' }).textContent()).toContain(subject ?? '');
      expect(await row.locator('button.pin').getAttribute('aria-pressed')).toBe('true');
      expect(await page.locator('#sheet-status').textContent()).toContain(`${subject} is lit in`);
      expect(await accessibilityFaults(page)).toEqual([]);
      await page.keyboard.press('Escape');
      expect(await page.locator('.has-lit, .pin[aria-pressed="true"]').count()).toBe(0);
      await page.close();
    });

    it('pointing lights a thing up and a click keeps it', async () => {
      const page = await openJob();
      const row = page.locator('.sheet tr[data-of]:has(button.pin)').first();
      const lit = () => page.locator('.lit').count();
      await row.hover();
      await expect.poll(lit).toBeGreaterThan(0);
      await page.locator('h1').hover();
      await expect.poll(lit).toBe(0);
      await row.click();
      await page.locator('h1').hover();
      expect(await lit()).toBeGreaterThan(0);
      await page.close();
    });
  });
}
