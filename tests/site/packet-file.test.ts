import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPrinter } from '../../lib/export/print/print-pdf.ts';
import { fixedPlan } from '../boards/fixed-jobs.ts';
import { openBrowser } from '../browser.ts';
import { canary, withCanaries } from '../publish/packet/canaries.ts';
import { packetOf, readyPlan } from '../publish/packet/ready-plan.ts';
import { secrets } from '../publish/sample/sample-site.ts';
import { complaintsOf, expectSoundSheet } from './page-checks.ts';
import { readPrinted } from './print-marks.ts';

/* A packet opened from a folder as from a memory stick, in a browser that has no network, and printed. */

const marked = withCanaries(readyPlan(fixedPlan('van-three-amps')));

describe('a packet on a memory stick', () => {
  let folder = '';
  let browser: Browser;
  let page: Page;
  let html = '';
  const asked: string[] = [];
  let complaints: string[] = [];

  beforeAll(async () => {
    html = await packetOf(marked, { shop: { telephone: '555 0177' } });
    folder = await mkdtemp(join(tmpdir(), 'rackleaf-packet-'));
    await writeFile(join(folder, 'packet.html'), html);
    browser = await openBrowser();
    const context = await browser.newContext({ offline: true, viewport: { width: 1280, height: 800 } });
    page = await context.newPage();
    page.on('request', (request) => asked.push(request.url()));
    complaints = complaintsOf(page);
    await page.goto(pathToFileURL(join(folder, 'packet.html')).href, { waitUntil: 'load' });
  });
  afterAll(async () => {
    await browser.close();
    await rm(folder, { recursive: true, force: true });
  });

  it('asks for nothing but itself, and nothing is against its policy', () => {
    expect(asked.filter((url) => !url.startsWith('data:'))).toEqual([
      pathToFileURL(join(folder, 'packet.html')).href,
    ]);
    expect(complaints).toEqual([]);
    expect(html).toContain("default-src 'none'");
    expect(html).not.toContain('<script');
  });

  it('is sound by ear, on a desk, on a phone and in the dark', async () => {
    await expectSoundSheet(page);
  });

  it('leads to every chapter that it names', async () => {
    const dead = `[...document.querySelectorAll('a[href^="#"]')].map((one) => one.getAttribute('href')).filter((href) => !document.querySelector(href))`;
    expect(await page.evaluate(dead)).toEqual([]);
    const twice = `(() => { const ids = [...document.querySelectorAll('[id]')].map((one) => one.id); return ids.filter((id, index) => ids.indexOf(id) !== index); })()`;
    expect(await page.evaluate(twice)).toEqual([]);
  });

  it('is printed with the same words and no more', async () => {
    const printer = await openPrinter();
    if ('missing' in printer) throw new Error(printer.missing);
    const pdf = await printer.print({
      address: 'http://site.invalid/packet.html',
      html,
      read: async () => null,
      day: '2026-02-09',
    });
    await printer.close();
    const pages = await readPrinted(pdf);
    expect(pages.flatMap(({ marks }) => marks)).toEqual([]);
    const text = pages
      .map((one) => one.text)
      .join('')
      .replaceAll(/\s/g, '')
      .toLowerCase();
    for (const told of ['Whensomethingstops', 'Fortowing,rescueandworkshops', '5550177', secrets.plate])
      expect(text).toContain(told.replaceAll(/\s/g, '').toLowerCase());
    for (const { title } of marked.items.filter(
      ({ kind, origin }) => kind === 'amplifier' && origin === 'job',
    ))
      expect(text).toContain(title.replaceAll(/\s/g, '').toLowerCase());
    for (const told of [canary, secrets.price, secrets.vin, secrets.contact, secrets['key-location']])
      expect(text).not.toContain(told.replaceAll(/\s/g, '').toLowerCase());
  });
});
