import { afterAll, expect, test } from 'vitest';
import { sourceCommand } from '../../compiled/compiled-code.ts';
import { serveIn } from '../../package/served.ts';
import { ShopFolder } from '../shop-folder.ts';

const shop = new ShopFolder();
afterAll(() => shop.remove());

test('an interrupted server ends, with pages being made and one just asked for', async () => {
  const served = await serveIn(shop.root, sourceCommand);
  const asked = fetch(`${served.url}jobs/demo/`).catch(() => null);
  expect(await served.end()).toBe(0);
  await asked;
});
