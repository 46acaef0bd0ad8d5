import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from '../browser.ts';
import { accessibilityFaults, faultsOfLooks, overhangPx, smallTargets } from './page-checks.ts';

describe('the checks of pages', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser?.close());

  it('find a faint text, a picture without words and a page that is too wide', async () => {
    const page = await browser.newPage();
    await page.setContent(
      '<!doctype html><html lang="en"><title>t</title><main><h1>t</h1><h2></h2><p style="color:#bbb">faint</p>' +
        '<img src="data:,"><div style="width:5000px">wide</div></main></html>',
    );
    const faults = (await accessibilityFaults(page)).map((fault) => fault.split(':')[0]);
    expect(faults).toContain('color-contrast');
    expect(faults).toContain('image-alt');
    expect(faults, 'a best practice of little impact').toContain('empty-heading');
    const again = (await faultsOfLooks(page)).map((fault) => fault.split(':')[0]);
    expect(again, 'what colours decide is asked again').toContain('color-contrast');
    expect(await overhangPx(page)).toBeGreaterThan(0);
    await page.close();
  });

  it('find what is wrong in a row of a table, and leave every row where it stood', async () => {
    const page = await browser.newPage();
    const row = (of: number, more = ''): string =>
      `<tr><th scope="row">Fuse ${of}</th><td>${of} A${more}</td></tr>`;
    const rows = Array.from({ length: 30 }, (_, k) => row(k, k === 5 ? '<img src="data:,">' : ''));
    await page.setContent(
      '<!doctype html><html lang="en"><title>t</title><main><h1>t</h1><table><caption>Fuses</caption>' +
        `<thead><tr><th scope="col">Fuse</th><th scope="col">Rating</th></tr></thead><tbody>${rows.join('')}</tbody></table></main></html>`,
    );
    const read = () => page.locator('main').innerHTML();
    const before = await read();
    expect((await accessibilityFaults(page)).map((fault) => fault.split(':')[0])).toEqual(['image-alt']);
    expect(await read()).toBe(before);
    await page.close();
  });

  it('find what is too small to press, and let a link in a sentence be', async () => {
    const page = await browser.newPage();
    await page.setContent(
      '<p>Read <a href="#a">on</a> here.</p><p><a href="#b">on</a></p>' +
        '<button style="width: 24px; height: 24px"></button><button style="width: 24px; height: 23px; padding: 0"></button>',
    );
    expect(await smallTargets(page)).toEqual([
      expect.stringMatching(/#b/),
      expect.stringMatching(/23px.* 24 x 23$/),
    ]);
    await page.close();
  });
});
