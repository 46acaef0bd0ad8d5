import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import { fileOf } from '../../lib/publish/site/addresses.ts';
import { buildSite } from '../../lib/publish/site/build-site.ts';
import { sitePages } from '../../lib/publish/site/site-pages.ts';
import { fixedPlan } from '../boards/fixed-jobs.ts';
import { openBrowser } from '../browser.ts';
import { sampleJob, sampleSite } from '../publish/sample-site.ts';
import { type StaticServer, serveFolder } from '../static-server.ts';

/** Tables of fuses, conductors and torques, by their captions. */
const captions =
  /^(Fuses|In place of fuses|Current of each device|Turn-on|Conductors|Voltage and drop|Ends, those|Fuses at the battery|Main fuse|Why the fuses|What a dead short|Fuses that would do|Why the conductors|Limits that the conductors|Terminals$)/;

/** Cells of such tables of which a part lies outside what is in sight without scrolling sideways. */
const cutCells = `(() => {
  const wanted = ${captions};
  const tables = [...document.querySelectorAll('table')].filter((table) =>
    wanted.test((table.caption ? table.caption.textContent : '').trim()));
  const cut = [];
  for (const table of tables)
    for (const cell of table.querySelectorAll('tbody th, tbody td')) {
      const walker = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        if (node.textContent.trim() === '') continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        for (const rect of range.getClientRects()) {
          let [left, right] = [0, document.documentElement.clientWidth];
          for (let up = cell; up && up !== document.body; up = up.parentElement) {
            if (getComputedStyle(up).overflowX === 'visible') continue;
            const box = up.getBoundingClientRect();
            left = Math.max(left, box.left);
            right = Math.min(right, box.right);
          }
          if (rect.left < left - 0.5 || rect.right > right + 0.5)
            cut.push(table.caption.textContent.trim() + ': ' + node.textContent.trim());
        }
      }
    }
  return { tables: tables.length, cut };
})()`;

const looked = z.object({ tables: z.number(), cut: z.array(z.string()) });

async function lookAt(page: Page): Promise<z.output<typeof looked>> {
  return looked.parse(await page.evaluate(cutCells));
}

/** The van as it is handed over: its main fuse is rated 200 A and more. */
function handedOver(plan: BuildPlan): BuildPlan {
  return { ...plan, job: { ...plan.job, status: 'installed' }, findings: [], measurements: [] };
}

describe('figures of fuses, conductors and torques on a phone', () => {
  const plans = [fixedPlan('van-three-amps'), handedOver(fixedPlan('estate-side-well'))];
  const site = sampleSite(plans.map((plan) => ({ ...sampleJob(plan), revisions: [] })));
  const pages = sitePages({ site, audience: 'shop' })
    .filter(({ template }) => ['job.njk', 'worksheet.njk', 'part.njk'].includes(template))
    .map(({ address }) => fileOf(address));
  let root = '';
  let server: StaticServer;
  let browser: Browser;
  beforeAll(async () => {
    root = await mkdtemp(join(tmpdir(), 'rackleaf-phone-'));
    const { folder } = await buildSite(site, { root, drawingsOf: () => [], audience: 'shop' });
    server = await serveFolder(folder, '/');
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await server?.close();
    await rm(root, { recursive: true, force: true });
  });

  it('a rating of three digits is among them', () => {
    const ratings = plans.flatMap(({ power }) => power.fuses.map(({ ratingA }) => ratingA ?? 0));
    expect(Math.max(...ratings)).toBeGreaterThanOrEqual(100);
  });

  it.each([320, 390])('are whole, none cut and none out of sight, at %d px', async (width) => {
    const page = await browser.newPage({ viewport: { width, height: 740 } });
    let tables = 0;
    for (const file of pages) {
      await page.goto(server.url + file, { waitUntil: 'load' });
      const seen = await lookAt(page);
      tables += seen.tables;
      expect(seen.cut, file).toEqual([]);
    }
    expect(tables).toBeGreaterThan(20);
    await page.close();
  });

  it('a figure that is cut is found', async () => {
    const page = await browser.newPage({ viewport: { width: 320, height: 740 } });
    await page.setContent(
      '<div style="overflow-x: auto; width: 100px"><table><caption>Fuses</caption><tbody><tr><td style="white-space: nowrap">A long name of a fuse and then 200 A</td></tr></tbody></table></div>',
    );
    expect((await lookAt(page)).cut).toHaveLength(1);
    await page.close();
  });

  it('a row tells what each of its figures is, without the head of the table', async () => {
    const page = await browser.newPage({ viewport: { width: 320, height: 740 } });
    await page.goto(server.url + fileOf('/jobs/van-three-amps/'), { waitUntil: 'load' });
    const named = `(() => {
      const table = [...document.querySelectorAll('table')].find((one) => one.caption?.textContent.trim() === 'Fuses');
      const [, second] = table.querySelector('tbody tr').children;
      return getComputedStyle(second, '::before').content + second.textContent.trim();
    })()`;
    expect(z.string().parse(await page.evaluate(named))).toMatch(/Rating: .*\d+ A/);
    await page.close();
  });
});
