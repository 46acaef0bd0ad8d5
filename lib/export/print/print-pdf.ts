import type { Browser, BrowserContext, Page } from 'playwright-core';
import { bundledBrowser } from './bundled-browser.ts';
import { findBrowser } from './find-browser.ts';
import { withFixedBytes } from './fixed-bytes.ts';

/** A page to print and what it asks for: nothing is read from the disk or the network. */
export interface PrintJob {
  /** Address that links of the page start from. */
  readonly address: string;
  readonly html: string;
  /** A file of the site by its address; null where there is none. */
  readonly read: (address: string) => Promise<{ readonly type: string; readonly body: Uint8Array } | null>;
  /** The day that the PDF bears, `2026-03-14`. */
  readonly day: string;
}

/** Prints pages one after another, then closes. */
export interface Printer {
  readonly print: (job: PrintJob) => Promise<Uint8Array>;
  readonly close: () => Promise<void>;
}

/** What is missing for printing. */
export interface NoPrinter {
  readonly missing: string;
}

/**
 * Opens a browser to print with: one that is installed, else the one that `@sparticuz/chromium` brings. Where
 * there is none, or `playwright-core` is not installed, what to do about it comes back.
 */
export async function openPrinter(): Promise<Printer | NoPrinter> {
  const driver = await import('playwright-core').then(
    (module) => module,
    () => null,
  );
  if (!driver) return { missing: 'PDF needs the package playwright-core: run npm install playwright-core' };
  const found = await findBrowser();
  const start = found === null ? await bundledBrowser() : { executablePath: found, args: [], env: {} };
  if (!start)
    return {
      missing:
        'PDF needs a browser, and none was found: install Chrome, Chromium or Edge, or set RACKLEAF_BROWSER to one; or print the page of the job from any browser',
    };
  const own = Object.entries(process.env).flatMap(([key, value]) =>
    value === undefined ? [] : [[key, value] as const],
  );
  try {
    const browser = await driver.chromium.launch({
      executablePath: start.executablePath,
      args: [...start.args],
      env: { ...Object.fromEntries(own), ...start.env },
    });
    return { print: (job) => print(browser, job), close: () => browser.close() };
  } catch (error) {
    const [reason = ''] = (error instanceof Error ? error.message : String(error)).split('\n');
    return { missing: `the browser ${start.executablePath} could not be started: ${reason}` };
  }
}

/** How a set is printed: on the paper that its style sheet names, with bookmarks. */
export const pdfOptions = {
  outline: true,
  tagged: true,
  preferCSSPageSize: true,
  printBackground: true,
} as const;

async function print(browser: Browser, job: PrintJob): Promise<Uint8Array> {
  const context = await browser.newContext({ javaScriptEnabled: false, locale: 'en-US', timezoneId: 'UTC' });
  try {
    const page = await openPrintPage(context, job);
    return withFixedBytes(await page.pdf(pdfOptions), job.day);
  } finally {
    await context.close();
  }
}

/** Opens what is to be printed, with its type and nothing from outside. */
export async function openPrintPage(context: BrowserContext, job: PrintJob): Promise<Page> {
  const page = await context.newPage();
  await page.route('**/*', async (route) => {
    const address = route.request().url();
    if (address === job.address)
      return route.fulfill({ contentType: 'text/html; charset=utf-8', body: job.html });
    const file = await job.read(address);
    return file
      ? route.fulfill({ contentType: file.type, body: Buffer.from(file.body) })
      : route.fulfill({ status: 404, body: '' });
  });
  await page.emulateMedia({ media: 'print' });
  await page.goto(job.address, { waitUntil: 'load' });
  // A page is loaded before its type is: without it texts would be measured, and broken, in another one.
  await page.evaluate('Promise.all([...document.fonts].map((face) => face.load())).then(() => true)');
  await page.evaluate('document.fonts.ready.then(() => true)');
  return page;
}
