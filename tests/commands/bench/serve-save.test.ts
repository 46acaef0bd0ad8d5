import { afterEach, beforeEach, expect, it } from 'vitest';
import { serveRows } from '../../../lib/commands/bench/serve-save.ts';
import { ShopFolder } from '../shop-folder.ts';

let shop: ShopFolder;
beforeEach(() => {
  shop = new ShopFolder();
});
afterEach(() => shop.remove());

it('times saves of a copy of the shop, each until its own page is shown, and leaves the shop as it is', async () => {
  const before = shop.read('content/jobs/demo.yaml');
  const rows = await serveRows(shop.root, 'demo');
  expect(rows.map(({ id, unit }) => [id, unit])).toEqual([
    ['serve-save', 'ms'],
    ['serve-save-work', 'ms'],
  ]);
  for (const { value } of rows) expect(value).toBeGreaterThan(0);
  expect(shop.read('content/jobs/demo.yaml')).toBe(before);
});
