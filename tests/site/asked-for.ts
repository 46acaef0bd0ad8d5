import type { BrowserContext, Page } from 'playwright-core';
import { z } from 'zod';
import { complaintsOf } from './page-checks.ts';

/** What a page asked for, and what it was refused. */
export interface AskedFor {
  readonly page: Page;
  /** Addresses that do not begin with where the site lies. */
  readonly foreign: readonly string[];
  /** What its console and its requests complain of. */
  readonly complaints: readonly string[];
  /** What its policy, or that of a frame in it, refused. */
  violations(): Promise<readonly string[]>;
}

/** Collects the violations of a document before anything of it runs. */
const listen = `(() => {
  const refused = [];
  Object.defineProperty(window, 'refusedHere', { value: refused });
  addEventListener('securitypolicyviolation', (event) => {
    refused.push(event.effectiveDirective + ': ' + (event.blockedURI || event.sample));
  });
})()`;

/** A context whose pages tell what their policies refuse. */
export async function tellsViolations(context: BrowserContext): Promise<BrowserContext> {
  await context.addInitScript(listen);
  return context;
}

/** Opens a page of a site that lies below an address, and notes all that it asks for. */
export async function openNoting(context: BrowserContext, site: string, path: string): Promise<AskedFor> {
  const page = await context.newPage();
  const foreign: string[] = [];
  page.on('request', (request) => {
    if (!request.url().startsWith(site)) foreign.push(request.url());
  });
  const complaints = complaintsOf(page);
  await page.goto(site + path, { waitUntil: 'load' });
  return {
    page,
    foreign,
    complaints,
    violations: async () => {
      const all = await Promise.all(page.frames().map((frame) => frame.evaluate('refusedHere')));
      return all.flatMap((one) => z.array(z.string()).parse(one));
    },
  };
}
