import { type Browser, chromium } from 'playwright-core';
import { bundledBrowser } from '../lib/export/print/bundled-browser.ts';

/**
 * Opens the browser that comes with the tests: no browser, library or font of the system is needed. That one
 * is built for Linux on x64; elsewhere an installed Chrome is used.
 */
export async function openBrowser(): Promise<Browser> {
  const bundled = await bundledBrowser();
  if (!bundled) return chromium.launch({ channel: 'chrome' });
  const { executablePath, args, env } = bundled;
  return chromium.launch({ executablePath, args: [...args], env: { ...process.env, ...env } });
}
