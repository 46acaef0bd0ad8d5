import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { withBoard } from '../../read/problem-case.ts';
import { ShopWithOwnStore } from '../shop-folder.ts';

const job = 'content/jobs/demo.yaml';
const shop = new ShopWithOwnStore(withBoard(), [
  job,
  'title: Bass amplifier\n    in: boot',
  'title: Bass amplifier\n    on: main',
]);
afterAll(() => shop.remove());

/** The searches for a place of a past board that are kept. */
const searches = (): string[] =>
  readdirSync(join(shop.root, '.rackleaf/kept/past-board-in-space'), { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map((one) => join(one.parentPath, one.name))
    .sort();

describe('the ranking of past boards on the site', () => {
  it('is searched for once: a build of the same, and one after another title, take what is kept', async () => {
    shop.write('content/jobs/second.yaml', shop.read(job).replace('id: demo', 'id: second'));
    expect((await shop.run('build')).status).toBeLessThan(2);
    const first = searches();
    expect(first.length).toBeGreaterThan(0);
    rmSync(join(shop.root, 'dist'), { recursive: true });
    expect((await shop.run('build')).status).toBeLessThan(2);
    expect(searches()).toEqual(first);
    shop.change(job, 'title: One amplifier', 'title: Another title');
    expect((await shop.run('build')).status).toBeLessThan(2);
    expect(searches()).toEqual(first);
    // The command asks the same of the same boards.
    expect((await shop.run('like', 'demo')).out).toMatch(/^1\. second, main, /m);
    expect(searches()).toEqual(first);
  });

  it('is searched for anew where the space changed', async () => {
    const before = searches();
    shop.change('content/vehicles/wagon.yaml', '[800 mm, 500 mm]', '[790 mm, 500 mm]');
    expect((await shop.run('build')).status).toBeLessThan(2);
    expect(searches().length).toBeGreaterThan(before.length);
  });
});
