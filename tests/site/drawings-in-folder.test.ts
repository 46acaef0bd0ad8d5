import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileOf } from '../../lib/publish/site/addresses.ts';
import { openBrowser } from '../browser.ts';
import { samplePlan } from '../publish/sample/sample-plan.ts';
import { sampleDrawings, sampleJob, sampleSite } from '../publish/sample/sample-site.ts';
import { writtenPages } from './written-pages.ts';

/* A page that is opened from a folder: its drawings come by themselves, and none is lost on paper. */

const plan = samplePlan();
const many = 24;
/** A job with more drawings than are near at once. */
const drawingsOf: typeof sampleDrawings = (one) => {
  const [upright] = sampleDrawings(one);
  return Array.from({ length: many }, (_, at) => ({
    sheet: 'cut-and-drill',
    id: `cut-${at}`,
    title: `Cut ${at}`,
    svg: upright?.svg.replaceAll(`${one.job.id}__cut-and-drill`, `${one.job.id}__cut-${at}`) ?? '',
  }));
};

describe('the drawings of a page in a folder', () => {
  let root = '';
  let browser: Browser;
  let url = '';
  beforeAll(async () => {
    root = await mkdtemp(join(tmpdir(), 'rackleaf-folder-'));
    await writtenPages(sampleSite([{ ...sampleJob(plan), revisions: [] }]), root, {
      drawingsOf,
      only: (address) => address === `/jobs/${plan.job.id}/`,
    });
    url = pathToFileURL(join(root, fileOf(`/jobs/${plan.job.id}/`))).href;
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await rm(root, { recursive: true, force: true });
  });

  it('all come without being looked at, and no frame stays behind', async () => {
    const page = await browser.newPage();
    await page.goto(url, { waitUntil: 'load' });
    await expect.poll(() => page.locator('.drawing iframe').count()).toBe(0);
    expect(await page.locator('.drawing svg').count()).toBe(many);
    await page.close();
  });

  it('are told on paper where one has not come', async () => {
    const page = await browser.newPage();
    await page.route('**/drawings/cut-3.*', () => undefined);
    await page.goto(url, { waitUntil: 'domcontentloaded' });
    await expect.poll(() => page.locator('.drawing').nth(0).locator('svg').count()).toBe(1);
    await page.emulateMedia({ media: 'print' });
    const told = `getComputedStyle(document.querySelectorAll('.drawing-wrap')[3], '::before').content`;
    await expect.poll(() => page.evaluate(told)).toContain('print once more');
    const first = `getComputedStyle(document.querySelectorAll('.drawing-wrap')[0], '::before').content`;
    expect(await page.evaluate(first)).toBe('none');
    await page.close();
  });
});
