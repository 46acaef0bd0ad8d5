import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import type { Change } from '../read/small-shop.ts';
import { misspelt, ShopFolder, stopped } from './shop-folder.ts';

const folders: ShopFolder[] = [];
function folder(...changes: readonly Change[]): ShopFolder {
  const made = new ShopFolder(...changes);
  folders.push(made);
  return made;
}
afterAll(() => {
  for (const one of folders) one.remove();
});

/** Every file of the current site with its bytes. */
function siteOf({ root }: ShopFolder): Record<string, string> {
  const site = join(root, 'dist');
  return Object.fromEntries(
    readdirSync(site, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((path) => [path.slice(site.length), readFileSync(path, 'base64')]),
  );
}

describe('build', () => {
  test('builds the site; bad input afterwards leaves every file as it is', async () => {
    const shop = folder();
    const built = await shop.run('build');
    expect(built.status).toBe(0);
    expect(built.out).toBe('');
    expect(built.told).toMatch(/\d+ pages, \d+ files: open .*dist\/index\.html/);
    const site = siteOf(shop);
    expect(Object.keys(site)).toContain('/jobs/demo/index.html');

    shop.change(...misspelt);
    const failed = await shop.run('build');
    expect(failed.status).toBe(2);
    expect(failed.told).toMatch(/there is no terminal of amp "RME"/);
    expect(failed.told).toMatch(/the site was not built, the last good one is untouched/);
    expect(siteOf(shop)).toEqual(site);
  });

  test('gives the same bytes from the same input in another folder', async () => {
    const [one, two] = [folder(), folder()];
    expect((await one.run('build')).status).toBe(0);
    expect((await two.run('build')).status).toBe(0);
    expect(Object.keys(siteOf(one))).toEqual(Object.keys(siteOf(two)));
    expect(siteOf(one)).toEqual(siteOf(two));
  });

  test('a stop builds the site all the same, with status 1 and the job marked as a draft', async () => {
    const shop = folder(stopped);
    const { status, told } = await shop.run('build');
    expect(status).toBe(1);
    expect(told).toMatch(/demo, revision A: DRAFT, stopped/);
    expect(readFileSync(join(shop.root, 'dist/jobs/demo/index.html'), 'utf8')).toMatch(/DRAFT/);
  });

  test('--keep-going builds what can be built and still exits with 2', async () => {
    const shop = folder();
    shop.change('content/guides/gain.md', 'summary:', 'sumary:');
    expect((await shop.run('build')).status).toBe(2);
    expect(existsSync(join(shop.root, 'dist'))).toBe(false);
    const kept = await shop.run('build', '--keep-going');
    expect(kept.status).toBe(2);
    expect(Object.keys(siteOf(shop))).toContain('/jobs/demo/index.html');
  });

  test('no file of the everyday site names the customer', async () => {
    const shop = folder();
    await shop.run('build');
    const text = Object.entries(siteOf(shop)).map(
      ([path, bytes]) => path + Buffer.from(bytes, 'base64').toString('latin1'),
    );
    expect(text.join('\n')).not.toMatch(/Ada Specimen|555 0199|QZX ?471/i);
  });
});
