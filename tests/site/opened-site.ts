import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import type { ShopSite } from '../../lib/publish/site/shop-site.ts';
import { openBrowser } from '../browser.ts';
import { type StaticServer, serveFolder } from '../static-server.ts';
import { type Written, writtenPages } from './written-pages.ts';

/** Pages of a site, served, and a browser to open them in. */
export interface OpenedSite {
  readonly url: string;
  readonly browser: Browser;
  /** The written pages in order. */
  readonly files: readonly string[];
}

/** Writes the pages of a site before the tests of a file or a `describe` and clears them away after; call what it gives in a test. */
export function openedSite(site: ShopSite, written: Written = {}): () => OpenedSite {
  let root = '';
  let server: StaticServer | null = null;
  let opened: OpenedSite | null = null;
  beforeAll(async () => {
    root = await mkdtemp(join(tmpdir(), 'rackleaf-pages-'));
    const files = await writtenPages(site, root, written);
    server = await serveFolder(root, '/');
    opened = { url: server.url, browser: await openBrowser(), files };
  });
  afterAll(async () => {
    await opened?.browser.close();
    await server?.close();
    await rm(root, { recursive: true, force: true });
  });
  return () => {
    if (!opened) throw new Error('The site is not open.');
    return opened;
  };
}
