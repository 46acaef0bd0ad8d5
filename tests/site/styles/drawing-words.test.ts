import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser } from '../../browser.ts';
import { overhangPx } from '../page-checks.ts';

const folder = fileURLToPath(new URL('../../../site/styles/', import.meta.url));
let browser: Browser | null = null;
let styles = '';
beforeAll(async () => {
  browser = await openBrowser();
  const files = (await readdir(folder)).filter((file) => file.endsWith('.css'));
  styles = (await Promise.all(files.map((file) => readFile(folder + file, 'utf8')))).join('\n');
});
afterAll(() => browser?.close());

// By how they lie on paper: `page` of a drawing as `lib/publish/page/print-rules.ts` names it.
test.each(['inline', 'whole', 'whole-lying', 'whole-tabloid', 'whole-a3-lying'])(
  'the words over and under a drawing that is %s wrap on the narrowest page',
  async (lying) => {
    if (!browser) throw new Error('No browser is open.');
    const page = await browser.newPage({ viewport: { width: 320, height: 740 } });
    const words = 'Ctrl and the wheel bring it nearer, dragging moves it, and so on over more than a line.';
    await page.setContent(
      `<!doctype html><style>${styles}</style><main><section class="sheet"><figure class="drawing ${lying} zoomable"><div class="drawing-tools"><small class="wheel-hint" style="display: inline">${words}</small></div><div class="drawing-wrap"></div><figcaption>${words}</figcaption></figure></section></main>`,
    );
    expect(await overhangPx(page)).toBe(0);
    await page.close();
  },
);
