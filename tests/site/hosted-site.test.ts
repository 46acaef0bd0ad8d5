import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { jobDrawings } from '../../lib/commands/drawings.ts';
import { fileOf } from '../../lib/publish/site/addresses.ts';
import { buildSite } from '../../lib/publish/site/build-site.ts';
import { photoPath } from '../../lib/publish/site/published-photo.ts';
import type { ShopSite } from '../../lib/publish/site/shop-site.ts';
import { filesBelow } from '../../lib/publish/site/site-digest.ts';
import { sitePages } from '../../lib/publish/site/site-pages.ts';
import { fixedContent, fixedPlan } from '../boards/fixed-jobs.ts';
import { openBrowser } from '../browser.ts';
import { casesOf, isDrawn } from '../long-run.ts';
import { samplePlan } from '../publish/sample/sample-plan.ts';
import { sampleDrawings, sampleJob, sampleSite } from '../publish/sample/sample-site.ts';
import { type StaticServer, serveFolder } from '../static-server.ts';
import { openNoting, tellsViolations } from './asked-for.ts';
import { brokenLinks } from './links-of-site.ts';
import { htmlFaults } from './valid-html.ts';

/* A site works wherever it lies: in a folder of a host that serves others too, and in a folder that nobody serves. */

const plan = fixedPlan('under-seat-five');
const { parts, vehicles } = fixedContent();
/** A title that would be an element wherever it were taken for markup. */
const title = 'Zyxwell <img src="x" onerror="zyx()"> board';
const plain = samplePlan();
const marked = { ...plain, job: { ...plain.job, title } };
const sample = sampleSite([sampleJob(marked), { ...sampleJob(plan), revisions: [] }]);
const picture = photoPath('0'.repeat(64));
const site: ShopSite = {
  ...sample,
  guides: [
    ...sample.guides,
    { slug: 'meter', title: 'Meter', summary: 'Where to read.', body: '![The meter](meter.jpg)\n' },
  ],
  guidePictures: { meter: { 'meter.jpg': { path: picture, widthPx: 16, heightPx: 12 } } },
  photos: [
    {
      path: picture,
      read: () =>
        sharp({ create: { width: 16, height: 12, channels: 3, background: '#225588' } })
          .jpeg()
          .toBuffer(),
    },
  ],
  parts: { ...parts, ...sample.parts },
  vehicles: { ...vehicles, ...sample.vehicles },
};
const drawn = jobDrawings();
const drawingsOf: typeof sampleDrawings = (one) =>
  one.job.id === plan.job.id ? drawn(one) : sampleDrawings(one);

/** One page of every kind: the first of its template, a guide with a picture, and the job that has all its drawings. */
const kinds = [
  ...new Map(
    sitePages({ site, audience: 'bench' })
      .toReversed()
      .map(({ template, address }) => [template, fileOf(address)]),
  ).values(),
  'guides/meter/index.html',
  `jobs/${plan.job.id}/index.html`,
];

/** In a folder the short run opens half of the kinds, and the job with drawings. */
const kindsInFolder = casesOf(
  kinds,
  (_, index, { length }) => isDrawn(index, { oneIn: 2 }) || index === length - 1,
);

let root = '';
let folder = '';
let browser: Browser;
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'rackleaf hosted '));
  ({ folder } = await buildSite(site, { root, drawingsOf }));
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await rm(root, { recursive: true, force: true });
});

/** Has a page do all that it does by itself: its drawings come, its forms compute. */
async function useUp(page: Page): Promise<void> {
  await expect.poll(() => frames(page), { message: page.url() }).toBe(0);
  for (const form of await page.locator('.calculator form').all())
    await form.locator('input').first().fill('7');
  const pin = page.locator('button.pin').first();
  if ((await pin.count()) > 0) await pin.press('Enter');
}

/** Frames that wait for their drawing, each brought into sight so that it comes. */
async function frames(page: Page): Promise<number> {
  const waiting = page.locator('.drawing iframe');
  const count = await waiting.count();
  if (count > 0)
    await waiting
      .first()
      .scrollIntoViewIfNeeded({ timeout: 1000 })
      .catch(() => undefined);
  return count;
}

/** The headers that the README asks a host to send, for what is not a drawing and for drawings. */
async function headersOfReadme(): Promise<readonly Record<string, string>[]> {
  const readme = await readFile(new URL('../../README.md', import.meta.url), 'utf8');
  return [...readme.matchAll(/```http\n([\s\S]*?)```/g)].map(([, text = '']) =>
    Object.fromEntries(
      text
        .trim()
        .split('\n')
        .map((line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trim()]),
    ),
  );
}

describe('a site below /a/b/ of a host', () => {
  let server: StaticServer;
  let context: BrowserContext;
  beforeAll(async () => {
    const [all = {}, drawing = {}] = await headersOfReadme();
    server = await serveFolder(folder, '/a/b/', (path) =>
      /\/drawings\/[^/]+\.svg$/.test(path) ? drawing : all,
    );
    context = await tellsViolations(await browser.newContext());
  });
  afterAll(async () => {
    await context?.close();
    await server?.close();
  });

  it('has no link that leads out of it, or to what is not there', async () => {
    expect(await brokenLinks(folder, '/a/b/')).toEqual([]);
  });

  it.each(kinds)('asks nobody else for anything, and keeps its policy: %s', async (file) => {
    const asked = await openNoting(context, server.url, file);
    await useUp(asked.page);
    expect(await asked.violations()).toEqual([]);
    expect(asked.foreign).toEqual([]);
    expect(asked.complaints).toEqual([]);
    await asked.page.close();
  });

  it('keeps its policy while it is searched, index and chunks from the same folder', async () => {
    const asked = await openNoting(
      context,
      server.url,
      `search/index.html?q=${encodeURIComponent(plan.job.title)}`,
    );
    await asked.page.locator('#search-results a').first().waitFor();
    expect(await asked.violations()).toEqual([]);
    expect(asked.foreign).toEqual([]);
    expect(asked.complaints).toEqual([]);
    await asked.page.close();
  });

  it('shows the markup of a title as text among what was found', async () => {
    const asked = await openNoting(context, server.url, 'search/index.html?q=zyxwell');
    const found = asked.page.locator('#search-results li');
    await found.first().waitFor();
    expect(await found.locator('a').allTextContents()).toEqual([title]);
    // The thumbnail of its board is all that is a picture there.
    expect(await found.locator('img:not(.hit-picture)').count()).toBe(0);
    expect(await asked.violations()).toEqual([]);
    await asked.page.close();
  });

  it('shows the pictures of its guides', async () => {
    const asked = await openNoting(context, server.url, 'guides/meter/index.html');
    await expect.poll(() => asked.page.evaluate("document.querySelector('main img').naturalWidth")).toBe(16);
    expect(asked.foreign).toEqual([]);
    await asked.page.close();
  });

  it('keeps its policy on paper, where every drawing is read at once', async () => {
    const asked = await openNoting(context, server.url, `jobs/${plan.job.id}/index.html`);
    await asked.page.emulateMedia({ media: 'print' });
    await expect.poll(() => asked.page.locator('.drawing iframe').count()).toBe(0);
    expect(await asked.violations()).toEqual([]);
    expect(asked.complaints).toEqual([]);
    await asked.page.close();
  });

  it('would tell of a script, a style and a picture that the policy does not allow', async () => {
    const asked = await openNoting(context, server.url, 'index.html');
    await asked.page.evaluate(`
      document.body.append(Object.assign(document.createElement('script'), { textContent: 'document.title = "run"' }));
      document.body.append(Object.assign(document.createElement('img'), { src: 'https://elsewhere.invalid/a.png' }));
      document.querySelector('h1').setAttribute('style', 'color: red');
    `);
    await expect
      .poll(async () => (await asked.violations()).map((one) => one.split(':')[0]).toSorted())
      .toEqual(['img-src', 'script-src-elem', 'style-src-attr']);
    expect(await asked.page.title()).not.toBe('run');
    await asked.page.close();
  });
});

describe('a site in a folder that nobody serves', () => {
  let context: BrowserContext;
  beforeAll(async () => {
    context = await tellsViolations(await browser.newContext({ offline: true }));
  });
  afterAll(() => context?.close());

  it.each(kindsInFolder)('asks nobody else for anything, and keeps its policy: %s', async (file) => {
    const asked = await openNoting(context, `${pathToFileURL(folder).href}/`, file);
    await useUp(asked.page);
    expect(await asked.violations()).toEqual([]);
    expect(asked.foreign).toEqual([]);
    expect(asked.complaints).toEqual([]);
    await asked.page.close();
  });
});

describe('each kind of page', () => {
  let context: BrowserContext;
  beforeAll(async () => {
    context = await browser.newContext({ javaScriptEnabled: false, offline: true });
  });
  afterAll(() => context?.close());

  it.each(kinds)('is HTML that a browser has nothing to repair in: %s', async (file) => {
    expect(await htmlFaults(context, await readFile(join(folder, file), 'utf8'))).toEqual([]);
  });

  it.each([
    ['a block in a paragraph', '<p>a<div>b</div></p>', 'repaired'],
    [
      'a text of a table that is in no cell',
      '<table><tbody><tr><div>a</div></tr></tbody></table>',
      'repaired',
    ],
    ['an end of nothing', '<div>a</div></div>', 'div: -1 more begin'],
    ['an id that stands twice', '<i id="a">a</i><i id="a">b</i>', 'the id a stands twice'],
    ['an attribute that stands twice', '<i class="a" title="b" class="c">a</i>', 'i has class twice'],
    ['a label of nothing', '<label for="b">a</label>', 'there is no b'],
  ])('would be told that it has %s', async (_, body, says) => {
    const html = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>t</title></head><body>${body}</body></html>`;
    expect((await htmlFaults(context, html)).join('; ')).toContain(says);
  });
});

describe('the policy of each page', () => {
  it('allows no style or script that is not named by its digest, and no code from a text', async () => {
    for (const file of (await filesBelow(folder)).filter((one) => one.endsWith('.html'))) {
      const html = await readFile(join(folder, file), 'utf8');
      const [, policy = ''] =
        /<meta http-equiv="Content-Security-Policy" content="([^"]+)">/.exec(html) ?? [];
      expect(policy, file).toContain("default-src 'none'");
      expect(policy, file).not.toMatch(/unsafe-inline|unsafe-hashes|'unsafe-eval'|\*|https?:/);
      expect(policy.includes("'wasm-unsafe-eval'"), file).toBe(file === 'search/index.html');
      expect(html, file).not.toMatch(/<[a-z][^>]*\s(?:style|on[a-z]+)="/i);
    }
  });
});
