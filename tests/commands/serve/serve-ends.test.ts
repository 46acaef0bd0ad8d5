import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { root } from '../../architecture/modules.ts';
import { serveIn } from '../../package/served.ts';
import { ShopFolder } from '../shop-folder.ts';

const shop = new ShopFolder();
afterAll(() => shop.remove());

test('an interrupted server ends, with pages being made and one just asked for', async () => {
  const loader = pathToFileURL(join(root, 'node_modules/tsx/dist/esm/index.mjs')).href;
  const served = await serveIn(shop.root, ['--import', loader, join(root, 'lib/cli.ts')]);
  const asked = fetch(`${served.url}jobs/demo/`).catch(() => null);
  expect(await served.end()).toBe(0);
  await asked;
});
