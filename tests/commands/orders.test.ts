import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { filesBelow } from './seen.ts';
import { ShopFolder } from './shop-folder.ts';

const demo = 'content/jobs/demo.yaml';
const second = 'content/jobs/second.yaml';
const shopPath = 'content/shop.yaml';

let shop: ShopFolder;
beforeEach(() => {
  shop = new ShopFolder([demo, 'holder-a, in: bay', 'holder-a, in: bay, fuse: 60 A']);
  shop.write(second, shop.read(demo).replace('id: demo', 'id: second'));
  shop.change(
    shopPath,
    'name: Test bench\n',
    'name: Test bench\ncurrency: EUR\nprices:\n  large-60: 77.31 per 2\n',
  );
  shop.change(shopPath, 'large-60: { pieces: 2 }', 'large-60: { pieces: 1 }');
});
afterEach(() => shop.remove());

async function ordered(): Promise<readonly string[]> {
  const { status, out } = await shop.run('export', '--orders', '--to', 'out');
  expect({ status, out }).toEqual({ status: 0, out: 'out/orders.csv' });
  return shop.read('out/orders.csv').split('\r\n');
}

const fuse = (jobs: string) => `large-60,60 A,fuse,1,piece,,77.31,2,1,77.31,EUR,${jobs}`;

test('the order list has what all jobs together lack, drawn and released ones, each revision once', async () => {
  expect(await ordered()).toContain(fuse('demo A; second A'));
  await shop.run('release', 'demo');
  expect(await ordered()).toContain(fuse('demo A; second A'));
  shop.change(demo, 'revision: A\nstatus: released', 'revision: B\nstatus: draft');
  expect(await ordered()).toContain(fuse('demo B; second A'));
  // What of it is built in is not ordered once more.
  const drawn = shop.read(demo);
  shop.write(
    demo,
    `${drawn}revisions:\n  - { revision: A, date: 2026-02-09, what: First issue, installed: 2026-02-20 }\n`,
  );
  expect((await ordered()).join('\n')).not.toMatch(/large-60|demo B/);
  shop.write(demo, drawn);
  expect(await ordered()).toContain(fuse('demo B; second A'));
  shop.change(second, 'status: draft', 'status: superseded');
  expect((await ordered()).join('\n')).not.toContain('large-60');
}, 600_000);

test('prices stand on no page of the site, and on no other of the shop than its estimates', async () => {
  for (const [audience, site] of [
    ['bench', 'dist'],
    ['shop', '.rackleaf/shop/dist'],
  ] as const) {
    const { status, told } = await shop.run('build', '--audience', audience);
    expect(status, told).toBe(0);
    const files = Object.entries(filesBelow(join(shop.root, site)));
    expect(files.length).toBeGreaterThan(10);
    expect(
      files
        .filter(([path, text]) => text.includes('77.31') && !/[\\/]estimate[\\/]index\.html$/.test(path))
        .map(([path]) => path),
    ).toEqual([]);
  }
}, 600_000);
