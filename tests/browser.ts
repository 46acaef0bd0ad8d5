import { type Browser, type BrowserContext, type BrowserContextOptions, chromium } from 'playwright-core';
import { bundledBrowser } from '../lib/export/print/bundled-browser.ts';

/** So long a page is waited for, on a machine that has much else to do. */
const patienceMs = 180_000;

/**
 * Opens the browser that comes with the tests: no browser, library or font of the system is needed. That one
 * is built for Linux on x64; elsewhere an installed Chrome is used.
 */
export async function openBrowser(): Promise<Browser> {
  const bundled = await bundledBrowser();
  if (!bundled) return patient(await chromium.launch({ channel: 'chrome', timeout: patienceMs }));
  const { executablePath, args, env } = bundled;
  return patient(
    await chromium.launch({
      ...{ executablePath, args: [...args], env: { ...process.env, ...env } },
      timeout: patienceMs,
    }),
  );
}

/** The same browser, whose pages wait as long for all that is asked of them. */
function patient(browser: Browser): Browser {
  const newContext = browser.newContext.bind(browser);
  browser.newContext = async (options?: BrowserContextOptions): Promise<BrowserContext> => {
    const context = await newContext(options);
    context.setDefaultTimeout(patienceMs);
    return context;
  };
  return browser;
}
