import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from '../browser.ts';
import { overhangPx, seriousFaults } from './page-checks.ts';

describe('the checks of pages', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser?.close());

  it('find a faint text, a picture without words and a page that is too wide', async () => {
    const page = await browser.newPage();
    await page.setContent(
      '<!doctype html><html lang="en"><title>t</title><main><h1>t</h1><p style="color:#bbb">faint</p>' +
        '<img src="data:,"><div style="width:5000px">wide</div></main></html>',
    );
    const faults = (await seriousFaults(page)).map((fault) => fault.split(':')[0]);
    expect(faults).toContain('color-contrast');
    expect(faults).toContain('image-alt');
    expect(await overhangPx(page)).toBeGreaterThan(0);
    await page.close();
  });
});
