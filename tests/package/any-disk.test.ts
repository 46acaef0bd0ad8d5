import { readdirSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { describe, expect, test } from 'vitest';
import { exporters, exportFormats } from '../../lib/export/index.ts';
import { a4Stock } from '../../lib/export/labels/label-stock.ts';
import { fileOf } from '../../lib/publish/site/addresses.ts';
import { shippedMetrics } from '../../lib/publish/site/shipped-metrics.ts';
import { siteAssets } from '../../lib/publish/site/site-assets.ts';
import { sitePages } from '../../lib/publish/site/site-pages.ts';
import { root } from '../architecture/modules.ts';
import { siteInFolder } from '../shops/site-in-folder.ts';
import { diskFaults } from './any-disk.ts';

describe('names of files lie together on every disk', () => {
  test('in the repository, content of the demo shop and all', () => {
    const made = ['node_modules', 'dist', '.dist', '.rackleaf', '.git'];
    const tops = readdirSync(root).filter((name) => !made.includes(name));
    const paths = tops.flatMap((top) =>
      statSync(join(root, top)).isDirectory()
        ? readdirSync(join(root, top), { recursive: true, encoding: 'utf8' }).map((path) => join(top, path))
        : [top],
    );
    expect(paths.length).toBeGreaterThan(1000);
    expect(diskFaults(paths.map((path) => path.split(sep).join('/')))).toEqual([]);
  });

  test('in the site of the demo shop, for each who it is made for, and among what is exported', async () => {
    const site = await siteInFolder(root);
    for (const audience of ['bench', 'shop'] as const) {
      const pages = sitePages({ site, audience }).map(({ address }) => fileOf(address));
      expect(diskFaults([...pages, ...siteAssets().map(({ path }) => path)])).toEqual([]);
    }
    const metrics = shippedMetrics();
    const choices = { unit: 'inch', paper: 'A4', labelStock: a4Stock } as const;
    for (const { plan } of site.jobs) {
      const files = exportFormats.flatMap((format) => exporters[format].files({ plan, metrics, choices }));
      expect(files.length).toBeGreaterThan(10);
      expect(diskFaults(files.map(({ name }) => name))).toEqual([]);
    }
  });
});

test('what could not lie together is found', () => {
  expect(diskFaults(['jobs/a/A/index.html', 'jobs/a/a/index.html'])).toHaveLength(2);
  expect(diskFaults(['jobs/con/index.html'])).toEqual([
    expect.stringMatching(/^jobs\/con is a name that Windows/),
  ]);
  expect(diskFaults(['jobs/a:b.svg'])).toHaveLength(1);
  expect(diskFaults(['jobs/a', 'jobs/b', 'jobs/a/c', '.gitignore'])).toEqual([]);
});
