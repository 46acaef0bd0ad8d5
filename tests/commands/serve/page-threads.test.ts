import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { openPageMaker } from '../../../lib/commands/serve/page-maker.ts';
import { FileLooks, type SeenFile } from '../../../lib/publish/serve/file-looks.ts';
import type { MakeOptions } from '../../../lib/publish/serve/page-maker.ts';
import { startCompiled } from '../../compiled/compiled-code.ts';
import { misspelt, ShopFolder } from '../shop-folder.ts';

// Threads take long to load the code: tests that leave them at work share one maker.
const shop = new ShopFolder();
const maker = openPageMaker(shop.root, () => undefined);
beforeAll(startCompiled);
afterAll(async () => {
  await maker.close();
  shop.remove();
});

const filesNow = async (one: ShopFolder = shop): Promise<readonly SeenFile[]> =>
  (await new FileLooks(one.root, ['content']).look()).files;

function options(signal = new AbortController().signal): MakeOptions {
  return { signal, isAwaited: () => true };
}

const wish = (files: readonly SeenFile[], address = '/jobs/demo/') => ({ address, files, layouts: 'l' });

describe('pages on threads', () => {
  it('come from the files that are handed over, not from those that stand there by then', async () => {
    const files = await filesNow();
    shop.change('content/jobs/demo.yaml', 'title: One amplifier', 'title: Changed since');
    const made = await maker.page(wish(files), options());
    shop.change('content/jobs/demo.yaml', 'title: Changed since', 'title: One amplifier');
    expect(made).toMatchObject({ state: 'made', html: expect.stringContaining('<h1>One amplifier</h1>') });
  });

  it('tell what could not be read, with its place, and at which address there is none', async () => {
    shop.change(...misspelt);
    const files = await filesNow();
    shop.change(misspelt[0], misspelt[2], misspelt[1]);
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
    const full = new ShopFolder();
    mkdirSync(join(full.root, '.rackleaf'));
    writeFileSync(join(full.root, '.rackleaf/kept'), 'a file where the folder should be');
    const said: string[] = [];
    const own = openPageMaker(full.root, (text) => said.push(text));
    onTestFinished(async () => {
      await own.close();
      full.remove();
    });
    const files = await filesNow(full);
    expect((await own.page(wish(files), options())).state).toBe('made');
    expect((await own.page(wish(files, '/jobs/demo/worksheet/'), options())).state).toBe('made');
    expect(said).toEqual([expect.stringContaining('results could not be kept')]);
  });
});
