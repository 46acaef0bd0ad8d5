import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileOf } from '../../lib/publish/addresses.ts';
import { buildSite } from '../../lib/publish/build-site.ts';
import type { DrawingsOf, ShopSite } from '../../lib/publish/shop-site.ts';
import { sitePages } from '../../lib/publish/site-pages.ts';
import { openBrowser } from '../browser.ts';
import { type StaticServer, serveFolder } from '../static-server.ts';
import { complaintsOf, headingLevels, overhangPx, printedPages, seriousFaults } from './page-checks.ts';

export interface SiteUnderTest {
  readonly name: string;
  readonly site: ShopSite;
  readonly drawingsOf: DrawingsOf;
  /** Pages that each job's sheets take on paper, by the job's id. */
  readonly printed: Readonly<Record<string, number>>;
}

/** One page of each template, and every job. */
function pagesToLookAt(site: ShopSite): string[] {
  const seen = new Set<string>();
  return sitePages({ site, audience: 'bench' })
    .filter(({ template, address }) => {
      const isNew = !seen.has(template);
      seen.add(template);
      return isNew || /^\/jobs\/[^/]+\/$/.test(address);
    })
    .map(({ address }) => fileOf(address));
}

/** Opens every kind of page of a built site in a real browser, as a reader with each kind of device would. */
export function describeSite({ name, site, drawingsOf, printed }: SiteUnderTest): void {
  describe(`the site of ${name} in a browser`, () => {
    let root = '';
    let server: StaticServer;
    let browser: Browser;
    let context: BrowserContext;
    beforeAll(async () => {
      root = await mkdtemp(join(tmpdir(), 'rackleaf-site-'));
      const { folder } = await buildSite(site, { root, drawingsOf });
      server = await serveFolder(folder, '/some/base/');
      browser = await openBrowser();
      context = await browser.newContext();
    });
    afterAll(async () => {
      await browser?.close();
      await server?.close();
      await rm(root, { recursive: true, force: true });
    });

    it.each(pagesToLookAt(site))('%s is sound on a desk, on a phone and in the dark', async (file) => {
      const page = await context.newPage();
      const complaints = complaintsOf(page);
      await page.goto(server.url + file, { waitUntil: 'networkidle' });
      expect(await seriousFaults(page)).toEqual([]);
      await page.setViewportSize({ width: 375, height: 740 });
      expect(await overhangPx(page)).toBe(0);
      expect(await seriousFaults(page)).toEqual([]);
      await page.emulateMedia({ colorScheme: 'dark' });
      expect(await seriousFaults(page)).toEqual([]);
      const levels = await headingLevels(page);
      expect(levels[0]).toBe(1);
      expect(levels.slice(1).filter((level, index) => level > (levels[index] ?? 0) + 1)).toEqual([]);
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

    it('search narrows by vehicle, part and board material, and the keyboard alone reaches the job', async () => {
      const [job] = site.jobs;
      const page = await context.newPage();
      const complaints = complaintsOf(page);
      await page.goto(`${server.url}search/index.html`);
      await page.locator('#find-words').waitFor();
      await page.locator('#find-vehicle').selectOption({ value: job?.plan.vehicle.title ?? '' });
      await page.locator('#search-results a').first().waitFor();
      await page.locator('#find-kind').selectOption({ value: 'Job' });
      await expect
        .poll(() => page.locator('#search-results li').count())
        .toBe(site.jobs.filter(({ plan }) => plan.vehicle.id === job?.plan.vehicle.id).length);
      expect(await page.locator('#find-part option').count()).toBeGreaterThan(1);
      expect(await page.locator('#find-board option').count()).toBeGreaterThan(1);
      await page.locator('#find-board').focus();
      await page.keyboard.press('Tab');
      expect(await page.evaluate('document.activeElement.closest("#search-results") !== null')).toBe(true);
      await page.keyboard.press('Enter');
      await page.waitForURL(/\/jobs\/[^/]+\/index\.html$/);
      expect(complaints).toEqual([]);
      await page.close();
    });

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

    it('without scripts every job is found in the plain index and every sheet can be read', async () => {
      const plain = await browser.newContext({ javaScriptEnabled: false });
      const page = await plain.newPage();
      await page.goto(`${server.url}search/index.html`);
      for (const { plan } of site.jobs)
        expect(await page.locator(`a[href="../jobs/${plan.job.id}/index.html"]`).count()).toBe(1);
      expect(await page.locator('#search-note').isVisible()).toBe(true);
      await plain.close();
    });

    it.each(Object.entries(printed))('job %s prints on %d pages', async (id, pages) => {
      const page = await context.newPage();
      await page.goto(`${server.url}jobs/${id}/index.html`, { waitUntil: 'networkidle' });
      const pdf = await page.pdf({ preferCSSPageSize: true });
      expect(printedPages(pdf)).toBe(pages);
      await page.close();
    });
  });
}
