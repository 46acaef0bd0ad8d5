import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { realEffects } from '../../lib/commands/effects.ts';
import { keep } from '../../lib/commands/keep.ts';
import { keptKinds } from '../../lib/plan/keeping/kept-values.ts';
import { ShopFolder } from './shop-folder.ts';

const job = 'content/jobs/demo.yaml';

let shop: ShopFolder;
beforeEach(() => {
  shop = new ShopFolder();
});
afterEach(() => shop.remove());

describe('keep', () => {
  test('shows what it would write, and writes nothing where nobody says yes', async () => {
    const before = shop.read(job);
    const { status, out, told } = await shop.run('keep', 'demo', 'labels');
    expect(status).toBe(0);
    expect(out.split('\n').slice(0, 3)).toEqual([
      `${job}:27`,
      '-   tail: { from: battery.POS, to: main-fuse.IN, length: 6 in }',
      '-   feed: { from: main-fuse.OUT, to: amp.B+ }',
    ]);
    expect(out).toContain('+   feed: { from: main-fuse.OUT, to: amp.B+, label: P2 }');
    expect(told.split('\n')).toEqual(['labels: 6', 'nothing is written; --yes writes it']);
    expect(shop.read(job)).toBe(before);
  });

  test('writes what it showed with --yes, and has nothing left to write then', async () => {
    const { out, told } = await shop.run('keep', 'demo', '--yes');
    expect(told).toContain(`${job} written`);
    const after = shop.read(job);
    for (const line of out.split('\n'))
      if (line.startsWith('+ ')) expect(after.split('\n')).toContain(line.slice(2));
    expect(after).toContain('status: draft # until it is released');
    expect(await shop.run('keep', 'demo')).toMatchObject({
      status: 0,
      out: '',
      told: `${job} says all of it already`,
    });
    expect((await shop.run('check', 'demo')).status).toBe(0);
  });

  test.each([true, false])('asks the person who sits there: %s', async (answer) => {
    const before = shop.read(job);
    const asked: string[] = [];
    const effects = {
      ...realEffects(shop.root),
      out: () => true,
      tell: () => true,
      confirm: async (question: string) => {
        asked.push(question);
        return answer;
      },
    };
    expect(await keep(effects, { job: 'demo', kinds: keptKinds, yes: false })).toBe(0);
    expect(asked).toEqual([`Write this into ${job}?`]);
    expect(shop.read(job) !== before).toBe(answer);
  });

  test('keeps the line ends of the file', async () => {
    shop.write(job, `\uFEFF${shop.read(job).replaceAll('\n', '\r\n')}`);
    await shop.run('keep', 'demo', '--yes');
    const after = shop.read(job);
    expect(after).toContain('label: P2 }\r\n');
    expect(after).toMatch(/^\uFEFFrackleaf/);
    expect(after.replaceAll('\r\n', '')).not.toContain('\n');
  });

  test('leaves a file alone that was changed while it was being looked at', async () => {
    const effects = {
      ...realEffects(shop.root),
      out: () => true,
      tell: (text: string) => told.push(text),
      confirm: async () => {
        shop.change(job, 'title: One amplifier', 'title: Saved meanwhile');
        return true;
      },
    };
    const told: string[] = [];
    expect(await keep(effects, { job: 'demo', kinds: ['labels'], yes: false })).toBe(2);
    expect(told.at(-1)).toMatch(/was changed meanwhile, so nothing is written\n {2}to do: /);
    expect(shop.read(job)).toContain('title: Saved meanwhile');
    expect(shop.read(job)).not.toContain('label: P2');
  });

  test('tells that a file may only be read', async () => {
    const before = shop.read(job);
    chmodSync(join(shop.root, job), 0o444);
    const { status, told } = await shop.run('keep', 'demo', '--yes');
    expect(status).toBe(3);
    expect(told).toMatch(/may only be read, so nothing is written\n {2}to do: allow writing/);
    expect(shop.read(job)).toBe(before);
  });

  test('keeps one label alone', async () => {
    const strange = await shop.run('keep', 'demo', 'labels.fed');
    expect(strange).toMatchObject({
      status: 2,
      told: 'keep: nothing of labels is proposed for "fed"; did you mean "feed"?',
    });
    const { out, told } = await shop.run('keep', 'demo', 'labels.feed', '--yes');
    expect(out.split('\n').filter((line) => line.startsWith('+ '))).toEqual([
      expect.stringContaining('feed: { from: main-fuse.OUT, to: amp.B+, label: P2 }'),
    ]);
    expect(told).toContain('labels: 1');
  });

  test('refuses a revision that is released, a job that is not there and a kind that is none', async () => {
    expect(await shop.run('keep', 'demo', 'place')).toMatchObject({ status: 2 });
    expect((await shop.run('keep', 'demmo')).told).toContain('did you mean "demo"?');
    await shop.run('release', 'demo');
    const { status, told } = await shop.run('keep', 'demo', '--yes');
    expect(status).toBe(2);
    expect(told).toMatch(/revision A, is released: its plan is frozen/);
  });
});
