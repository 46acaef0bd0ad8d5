import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openPageMaker } from '../../../lib/commands/serve/page-maker.ts';
import { FileLooks, type SeenFile } from '../../../lib/publish/serve/file-looks.ts';
import type { MakeOptions, PageMaker } from '../../../lib/publish/serve/page-maker.ts';
import { misspelt, ShopFolder } from '../shop-folder.ts';

let shop: ShopFolder;
let maker: PageMaker;
const said: string[] = [];
beforeEach(() => {
  shop = new ShopFolder();
  said.length = 0;
  maker = openPageMaker(shop.root, (text) => said.push(text));
});
afterEach(async () => {
  await maker.close();
  shop.remove();
});

const filesNow = async (): Promise<readonly SeenFile[]> =>
  (await new FileLooks(shop.root, ['content']).look()).files;

function options(signal = new AbortController().signal): MakeOptions {
  return { signal, isAwaited: () => true };
}

const wish = (files: readonly SeenFile[], address = '/jobs/demo/') => ({ address, files, layouts: 'l' });

describe('pages on threads', () => {
  it('come from the files that are handed over, not from those that stand there by then', async () => {
    const files = await filesNow();
    shop.change('content/jobs/demo.yaml', 'title: One amplifier', 'title: Changed since');
    const made = await maker.page(wish(files), options());
    expect(made).toMatchObject({ state: 'made', html: expect.stringContaining('<h1>One amplifier</h1>') });
  });

  it('tell what could not be read, with its place, and at which address there is none', async () => {
    shop.change(...misspelt);
    const files = await filesNow();
    const unread = await maker.page(wish(files), options());
    expect(unread.state).toBe('unread');
    expect(unread.problems[0]?.where.file).toBe('content/jobs/demo.yaml');
    expect((await maker.page(wish(files, '/guides/none/'), options())).state).toBe('absent');
  });

  it('are given up with the reason of the signal, and others are made after them', async () => {
    const control = new AbortController();
    const files = await filesNow();
    const given = maker.page(wish(files), options(control.signal));
    // It was handed to a thread at once, which has not even started.
    control.abort(new Error('a later save'));
    await expect(given).rejects.toThrow('a later save');
    expect((await maker.page(wish(files), options())).state).toBe('made');
  });

  it('are made all the same where nothing can be kept, which is told once', async () => {
    mkdirSync(join(shop.root, '.rackleaf'));
    writeFileSync(join(shop.root, '.rackleaf/kept'), 'a file where the folder should be');
    const files = await filesNow();
    expect((await maker.page(wish(files), options())).state).toBe('made');
    expect((await maker.page(wish(files, '/jobs/demo/worksheet/'), options())).state).toBe('made');
    expect(said).toEqual([expect.stringContaining('results could not be kept')]);
  });
});
