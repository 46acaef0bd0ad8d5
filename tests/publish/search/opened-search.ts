import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { addresses } from '../../../lib/publish/site/addresses.ts';
import type { ShopSite } from '../../../lib/publish/site/shop-site.ts';
import { sitePages } from '../../../lib/publish/site/site-pages.ts';
import { searchIndex } from '../../../lib/publish/site/write-search-index.ts';
import { openBrowser } from '../../browser.ts';
import { writtenPages } from '../../site/written-pages.ts';
import { type StaticServer, serveFolder } from '../../static-server.ts';

/** The search page of a site, served with its index below a folder of a host, in a browser. */
export interface OpenedSearch {
  /** Opens the page anew; what stands behind its address may be given: `?q=1/0`. */
  newPage(query?: string): Promise<Page>;
}

/** Writes the search page of a site and its index, and no other page, before the tests of a file; call what it gives in a test. */
export function openedSearch(site: ShopSite): () => OpenedSearch {
  let root = '';
  let server: StaticServer | null = null;
  let browser: Browser | null = null;
  beforeAll(async () => {
    root = await mkdtemp(join(tmpdir(), 'rackleaf-search-'));
    await writtenPages(site, root, { only: (address) => address === addresses.search });
    for (const { path, read } of await searchIndex(sitePages({ site, audience: 'bench' }))) {
      await mkdir(dirname(join(root, path)), { recursive: true });
      await writeFile(join(root, path), await read());
    }
    server = await serveFolder(root, '/a/b/');
    browser = await openBrowser();
  }, 600_000);
  afterAll(async () => {
    await browser?.close();
    await server?.close();
    await rm(root, { recursive: true, force: true });
  });
  return () => ({
    newPage: async (query = '') => {
      if (!browser || !server) throw new Error('The search is not open.');
      const page = await browser.newPage();
      await page.goto(`${server.url}search/index.html${query}`);
      await page.locator('#find-words').waitFor();
      return page;
    },
  });
}
