import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Change } from '../read/small-shop.ts';
import { misspelt, type Ran, type ShopFolder, ShopWithOwnStore, stopped } from './shop-folder.ts';

const folders: ShopFolder[] = [];
function folder(...changes: readonly Change[]): ShopFolder {
  const made = new ShopWithOwnStore(...changes);
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
  const shop = folder();
  let built: Ran;
  beforeAll(async () => {
    built = await shop.run('build');
  });

  test('builds the site; bad input afterwards leaves every file as it is', async () => {
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
    const other = folder();
    expect((await other.run('build')).status).toBe(0);
    expect(Object.keys(siteOf(other))).toEqual(Object.keys(siteOf(shop)));
    expect(siteOf(other)).toEqual(siteOf(shop));
  });

  test('tells where the site is now after the shop was moved with all that is kept in it', async () => {
    const [before, after] = [folder(), folder()];
    await before.run('build');
    rmSync(after.root, { recursive: true });
    renameSync(before.root, after.root);
    const { status, told } = await after.run('build');
    mkdirSync(before.root);
    expect(status).toBe(0);
    expect(told).toContain(join(after.root, 'dist/index.html'));
    expect(told).not.toContain(before.root);
  });

  test('a stop builds the site all the same, with status 1 and the job marked as a draft', async () => {
    const draft = folder(stopped);
    const { status, told } = await draft.run('build');
    expect(status).toBe(1);
    expect(told).toMatch(/demo, revision A: DRAFT, stopped/);
    expect(readFileSync(join(draft.root, 'dist/jobs/demo/index.html'), 'utf8')).toMatch(/DRAFT/);
  });

  test('--keep-going builds what can be built and still exits with 2', async () => {
    const faulty = folder();
    faulty.change('content/guides/gain.md', 'summary:', 'sumary:');
    expect((await faulty.run('build')).status).toBe(2);
    expect(existsSync(join(faulty.root, 'dist'))).toBe(false);
    const kept = await faulty.run('build', '--keep-going');
    expect(kept.status).toBe(2);
    expect(Object.keys(siteOf(faulty))).toContain('/jobs/demo/index.html');
  });

  test('no file of the everyday site names the customer', () => {
    const text = Object.entries(siteOf(shop)).map(
      ([path, bytes]) => path + Buffer.from(bytes, 'base64').toString('latin1'),
    );
    expect(text.join('\n')).not.toMatch(/Ada Specimen|555 0199|QZX ?471/i);
  });
});
