import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { serveRows } from '../../../lib/commands/bench/serve-save.ts';
import { benchParts, readBenchParts } from '../../../lib/commands/bench.ts';
import { startCompiled } from '../../compiled/compiled-code.ts';
import { ShopFolder } from '../shop-folder.ts';

let shop: ShopFolder;
beforeAll(startCompiled);
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

describe('parts of the benchmark', () => {
  it('are all where none is named, in their own order, and no others', () => {
    expect(readBenchParts([])).toEqual(benchParts);
    expect(readBenchParts(['serve', 'solve'])).toEqual(['solve', 'serve']);
    expect(readBenchParts(['paint'])).toBe('--part takes solve, board, job, serve, diagrams');
  });
});
