import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { pdfOptions } from '../../lib/export/print/print-pdf.ts';
import { pageWithFiles } from '../../lib/publish/page/render-page.ts';
import type { PageMade } from '../../lib/publish/serve/page-maker.ts';
import { type Served, serve } from '../../lib/publish/serve/serve.ts';
import { plainNames } from '../../lib/publish/site/assets/asset-names.ts';
import { sitePages } from '../../lib/publish/site/site-pages.ts';
import { openTemplates } from '../../lib/publish/site/templates.ts';
import { openBrowser } from '../browser.ts';
import { samplePlan } from '../publish/sample/sample-plan.ts';
import { sampleDrawings, sampleJob, sampleSite } from '../publish/sample/sample-site.ts';
import { FakeMaker, unread } from '../publish/serve/fake-maker.ts';
import { saveWhole } from '../publish/serve/whole-save.ts';
import { accessibilityFaults, complaintsOf, overhangPx } from './page-checks.ts';
import { readPrinted } from './print-marks.ts';

const templates = openTemplates();
const address = '/jobs/sample-job/';
const job = 'content/jobs/sample-job.yaml';

/** The page of the sample job with a title, and with lines of changes above its sheets. */
function sampleMade(title: string, changes: readonly string[] = []): PageMade {
  const plan = samplePlan();
  const own = { ...sampleJob({ ...plan, job: { ...plan.job, title } }), changes };
  const page = sitePages({ site: sampleSite([own]), audience: 'bench' }).find(
    (one) => one.address === address,
  );
  if (!page) throw new Error('The sample site has no page of its job.');
  return {
    state: 'made',
    ...pageWithFiles(page, { templates, names: plainNames }, sampleDrawings),
    problems: [],
  };
}

let root = '';
let maker: FakeMaker;
let served: Served;
let browser: Browser;
let page: Page;
let complaints: string[] = [];

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser?.close());

beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'rackleaf-served-'));
  await mkdir(join(root, 'content/jobs'), { recursive: true });
  await save('First title');
  maker = new FakeMaker();
  maker.rule = ({ files }) => {
    const text = files.find(({ path }) => path === job)?.text ?? '';
    return text.startsWith('bad') ? unread(job, 'titel is not a known name') : sampleMade(text);
  };
  const opened = await serve({ root, maker, built: join(root, 'dist'), say: () => undefined });
  if ('missing' in opened) throw new Error(opened.missing);
  served = opened;
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  complaints = complaintsOf(page);
});
afterEach(async () => {
  await page.close();
  await served.close();
  await rm(root, { recursive: true, force: true });
});

const save = (text: string) => saveWhole(join(root, job), text);
const open = () => page.goto(`${served.url}jobs/sample-job/`, { waitUntil: 'load' });
const banner = () => page.locator('#live');
const heading = () => page.locator('h1').textContent();

/** What stands before each element of a kind by the style sheets alone. */
async function marksBefore(selector: string): Promise<string[]> {
  const script = `[...document.querySelectorAll('${selector}')].map((one) => getComputedStyle(one, '::before').content)`;
  return z.array(z.string()).parse(await page.evaluate(script));
}

/** How far below the head of the window a sheet begins. */
async function topOf(id: string): Promise<number> {
  return z
    .number()
    .parse(await page.evaluate(`document.getElementById('${id}').getBoundingClientRect().top`));
}

describe('a served page in a browser', () => {
  it('says nothing while it is current, on screen and on paper', async () => {
    await open();
    expect(await banner().isHidden()).toBe(true);
    expect(new Set(await marksBefore('.sheet-line, .drawing figcaption'))).toEqual(new Set(['none']));
    for (const { text } of await readPrinted(await page.pdf(pdfOptions)))
      expect(text).not.toContain('NOT CURRENT');
    expect(complaints).toEqual([]);
  });

  it('marks itself and every sheet as not current when the input is bad, without being loaded anew', async () => {
    await open();
    await page.evaluate('window.untouched = true');
    await save('bad');
    await banner().getByText('NOT CURRENT').waitFor();
    expect(await banner().textContent()).toContain(`${job}:3:9: error: titel is not a known name`);
    expect(await page.evaluate('window.untouched')).toBe(true);
    const marks = await marksBefore('.sheet-line, .drawing figcaption');
    expect(marks.length).toBeGreaterThan(10);
    for (const mark of marks) expect(mark).toContain('NOT CURRENT');
    expect(await page.title()).toMatch(/^NOT CURRENT: /);
    await page.evaluate('window.scrollTo(0, document.body.scrollHeight)');
    expect(await page.locator('.live-line').boundingBox()).toMatchObject({ y: 0 });
    expect(complaints).toEqual([]);
  });

  it('bears the mark on every printed page, drawings among them, and none once it is current again', async () => {
    await open();
    await save('bad');
    await banner().getByText('NOT CURRENT').waitFor();
    const marked = await readPrinted(await page.pdf(pdfOptions));
    expect(marked.some(({ widthPt, heightPt }) => widthPt > heightPt)).toBe(true);
    for (const { text } of marked) expect(text).toContain('NOT CURRENT: do not build from this sheet');
    await save('First title');
    await banner().waitFor({ state: 'hidden' });
    for (const { text } of await readPrinted(await page.pdf(pdfOptions)))
      expect(text).not.toContain('NOT CURRENT');
  });

  it('comes with the marks where it is opened after the error', async () => {
    await open();
    await save('bad');
    await banner().getByText('NOT CURRENT').waitFor();
    await page.setViewportSize({ width: 390, height: 844 });
    await open();
    expect(await heading()).toBe('First title');
    expect(await banner().isVisible()).toBe(true);
    for (const mark of await marksBefore('.sheet-line, .drawing figcaption'))
      expect(mark).toContain('NOT CURRENT');
    expect(await overhangPx(page)).toBe(0);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it('says that it planning the latest save while that lasts, and loads itself anew once it is', async () => {
    await open();
    maker.rule = null;
    await save('Second title');
    await banner().getByText('planning the latest save').waitFor();
    expect(await heading()).toBe('First title');
    for (const mark of await marksBefore('.sheet-line')) expect(mark).toContain('NOT CURRENT');
    maker.last(address).answer(sampleMade('Second title'));
    await page.getByRole('heading', { name: 'Second title' }).waitFor();
    await banner().waitFor({ state: 'hidden' });
  });

  it('comes by itself where it was opened before it was made for the first time', async () => {
    maker.rule = null;
    await save('Second title');
    await expect.poll(() => maker.wished.at(-1)?.wish.files[0]?.text).toBe('Second title');
    await page.goto(`${served.url}jobs/sample-job/worksheet/`);
    await page.getByText('NOT MADE YET').first().waitFor();
    maker.last(`${address}worksheet/`).answer(sampleMade('Second title'));
    await page.getByRole('heading', { name: 'Second title' }).waitFor();
  });

  it.each(['labels', 'wire-list'])('keeps the place of the reader, at %s', async (sheet) => {
    await open();
    await page.evaluate(`document.getElementById('${sheet}').scrollIntoView()`);
    await page.evaluate('window.scrollBy(0, 40)');
    maker.rule = null;
    await save('Second title');
    await banner().getByText('planning the latest save').waitFor();
    // What the banner moves is where the reader is then.
    let before = Number.NaN;
    const isStill = async (): Promise<boolean> => {
      const last = before;
      before = await topOf(sheet);
      return before === last;
    };
    await expect.poll(isStill).toBe(true);
    maker.last(address).answer(
      sampleMade(
        'Second title',
        Array.from({ length: 12 }, (_, line) => `Line ${line} that moves what is below`),
      ),
    );
    await page.getByRole('heading', { name: 'Second title' }).waitFor({ state: 'attached' });
    await banner().waitFor({ state: 'hidden' });
    await expect.poll(async () => Math.abs((await topOf(sheet)) - before)).toBeLessThan(3);
    expect(await page.evaluate('window.scrollY')).toBeGreaterThan(500);
  });

  it('is not loaded anew where a save changes nothing of it', async () => {
    await open();
    await page.evaluate('window.untouched = true');
    maker.rule = null;
    await save('Of another file');
    await banner().getByText('planning the latest save').waitFor();
    maker.last(address).answer(sampleMade('First title'));
    await banner().waitFor({ state: 'hidden' });
    expect(await page.evaluate('window.untouched')).toBe(true);
  });

  it('does not pass for current once nobody tells how it stands', async () => {
    await open();
    await served.close();
    await banner().getByText('The server has ended').waitFor();
    for (const mark of await marksBefore('.sheet-line')) expect(mark).toContain('NOT CURRENT');
  });
});
