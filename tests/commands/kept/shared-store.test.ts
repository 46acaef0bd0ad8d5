import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { commandLine, startCompiled } from '../../compiled/compiled-code.ts';
import { run, type Said } from '../../package/npm.ts';
import { ColdShops, filesBelow, saidIn, seen } from '../seen.ts';
import { type ShopFolder, ShopWithOwnStore } from '../shop-folder.ts';

let shop: ShopFolder;
const cold = new ColdShops();
beforeAll(startCompiled);
beforeEach(() => {
  shop = new ShopWithOwnStore();
});
afterEach(() => shop.remove());

/** A command in a process of its own, which ends all that it says with the end of a line. */
async function inProcess(...words: readonly string[]): Promise<Said> {
  const { status, out, told } = await run(shop.root, process.execPath, ...commandLine(), ...words);
  return saidIn(shop, { status, out: out.trimEnd(), told: told.trimEnd() });
}

describe('two processes on one shop', () => {
  it('both build it from nothing kept, and then build and check a change: each as it is from cold', async () => {
    const first = await cold.seen(shop);
    for (const built of await Promise.all([inProcess('build'), inProcess('build')]))
      expect(built).toEqual(first.build);
    expect(filesBelow(join(shop.root, 'dist'))).toEqual(first.site);

    shop.change('content/jobs/demo.yaml', 'length: 12 in', 'length: 14 in');
    const then = await cold.seen(shop);
    const [built, checked] = await Promise.all([inProcess('build'), inProcess('check')]);
    expect(built).toEqual(then.build);
    expect(checked).toEqual(then.check);
    expect(filesBelow(join(shop.root, 'dist'))).toEqual(then.site);
    expect(then.site).not.toEqual(first.site);

    // Nothing is left of either but what is kept, and that whole: one who comes after sees the same.
    expect(readdirSync(join(shop.root, '.rackleaf'))).toEqual(['kept', 'schemas']);
    expect(
      Object.keys(filesBelow(join(shop.root, '.rackleaf'))).filter((path) => /\.part$/.test(path)),
    ).toEqual([]);
    expect(await seen(shop)).toEqual(then);
  });
});

describe('a shop in which nothing can be kept', () => {
  it('is checked and built as from cold, and says so of every command', async () => {
    const { build, check, plan, site } = await cold.seen(shop);
    mkdirSync(join(shop.root, '.rackleaf'));
    writeFileSync(join(shop.root, '.rackleaf/kept'), 'a file where the folder should be');
    const now = await seen(shop);
    for (const [said, from] of [
      [now.build, build],
      [now.check, check],
      [now.plan, plan],
    ] as const) {
      expect(said.told).toMatch(
        /^results could not be kept, so that the next run takes as long as this one: /m,
      );
      expect({ ...said, told: said.told.replace(/\n?results could not be kept.*/, '') }).toEqual(from);
    }
    expect(now.site).toEqual(site);
  });
});
