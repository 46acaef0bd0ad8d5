import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { realEffects } from '../../../lib/commands/effects.ts';
import { runCommand } from '../../../lib/commands/run-command.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { ShopFolder } from '../shop-folder.ts';
import { leaflets } from './leaflets.ts';
import { Typed } from './typed.ts';

const shop = new ShopFolder();
afterAll(() => shop.remove());

const enters = (count: number): readonly string[] => Array.from({ length: count }, () => '');
const problemsIn = async (path: string) => {
  const { problems } = readContent(await realEffects(shop.root).readContent());
  return problems.filter(({ where }) => where.file === path).map(({ message }) => message);
};

describe('no answer is lost', () => {
  test('rows of a list that was broken off are kept, and the list goes on behind them', async () => {
    const rows = ['floor, cabin, left, M8', 'roof, cabin, left, M6'];
    const first = new Typed('Invented van', '', '', '', ...rows);
    const broken = await shop.answered(first, 'new', 'vehicle', 'van');
    expect([broken.status, broken.out]).toEqual([2, '']);
    expect(broken.told).toMatch(/drafts\/vehicle-van\.json keeps the answers/);
    const second = new Typed('sill, sill, left, M8', ...enters(20));
    const whole = await shop.answered(second, 'new', 'vehicle', 'van');
    expect([whole.status, second.refused]).toEqual([0, []]);
    const text = shop.read('content/vehicles/van.yaml');
    for (const name of ['floor', 'roof', 'sill'])
      expect(text).toMatch(new RegExp(`^ {2}${name}: \\{ zone`, 'm'));
  });

  test('flags that fit are kept beside one that does not: the next try needs the mended one alone', async () => {
    const { case: size = [], facts = [] } = leaflets.enclosure;
    const line = ['new', 'part', 'own-box', '--kind', 'enclosure'];
    const wrong = await shop.run(
      ...line,
      '--title',
      'Box',
      '--case',
      size[0] ?? '',
      '--facts',
      '45, ported, 33 Hz',
    );
    expect([wrong.status, wrong.out]).toEqual([2, '']);
    expect(wrong.told).toMatch(/--facts "45, ported, 33 Hz": volume "45" has no unit/);
    expect(wrong.told).toMatch(/drafts\/part-enclosure-own-box\.json keeps the answers/);
    const right = await shop.run(...line, '--facts', facts[0] ?? '');
    expect([right.status, right.out]).toEqual([0, 'content/parts/own-box.yaml']);
    expect(shop.read('content/parts/own-box.yaml')).toContain('title: Box');
    expect(existsSync(join(shop.root, '.rackleaf/drafts/part-enclosure-own-box.json'))).toBe(false);
  });

  test('a part of which answers are kept goes on without its kind; of two kinds it is asked', async () => {
    const [size = ''] = leaflets.enclosure.case ?? [];
    const [facts = ''] = leaflets.enclosure.facts ?? [];
    const wrong = ['--title', 'Box', '--case', size, '--facts', '45, ported, 33 Hz'];
    await shop.run('new', 'part', 'kind-box', '--kind', 'enclosure', ...wrong);
    const { status, out } = await shop.run('new', 'part', 'kind-box', '--facts', facts);
    expect([status, out]).toEqual([0, 'content/parts/kind-box.yaml']);
    expect(shop.read('content/parts/kind-box.yaml')).toContain('kind: enclosure');
    for (const kind of ['enclosure', 'speaker'])
      await shop.run('new', 'part', 'two-kinds', '--kind', kind, '--title', 'Box', '--case', size);
    const asked = await shop.run('new', 'part', 'two-kinds', '--facts', facts);
    expect([asked.status, asked.told]).toEqual([2, expect.stringContaining('--kind is needed')]);
    const none = await shop.run('new', 'part', 'nobody-knows', '--facts', facts);
    expect(none.told).toContain('--kind is needed');
  });

  test.each([
    ['the file alone', /^content/, /drafts\/vehicle-bus\.json keeps the answers/],
    [
      'anything',
      /./,
      /content\/vehicles\/bus\.yaml can't be written; this is its text:\nrackleaf: 1\nid: bus\n/,
    ],
  ])('a disk that does not take %s loses none', async (_, refuses, says) => {
    const told: string[] = [];
    const real = realEffects(shop.root);
    const full = Object.assign(new Error('ENOSPC'), { code: 'ENOSPC' });
    const line = ['new', 'vehicle', 'bus', '--title', 'Invented bus'];
    const status = await runCommand(line, shop.root, {
      ...real,
      out: () => undefined,
      tell: (text) => told.push(text),
      write: (path, text) => (refuses.test(path) ? Promise.reject(full) : real.write(path, text)),
    });
    expect(status).toBe(3);
    expect(told.join('\n')).toMatch(says);
    expect(existsSync(join(shop.root, 'content/vehicles/bus.yaml'))).toBe(false);
  });
});

describe('what is not whole is written all the same', () => {
  test('a part of which something is not known, with the place marked', async () => {
    const person = new Typed(
      ...['Invented box', '14 in, ?, 13 in, 7.5 kg', '45 L, ported, 33 Hz'],
      // Which answer is given anew: none.
      '',
    );
    const line = ['new', 'part', 'half-known', '--kind', 'enclosure'];
    const { status, out, told } = await shop.answered(person, ...line);
    expect([status, out]).toEqual([2, 'content/parts/half-known.yaml']);
    expect(told).toMatch(/half-known\.yaml is written, and one place is still to be written in it/);
    const text = shop.read('content/parts/half-known.yaml');
    expect(text).toMatch(
      /^ {4}# Still to be written: .*depth.*\n {4}size: \{ width: 14 in, height: 13 in \}$/m,
    );
    expect(await problemsIn('content/parts/half-known.yaml')).toHaveLength(1);
    shop.change('content/parts/half-known.yaml', 'width: 14 in, ', 'width: 14 in, depth: 9 in, ');
    expect(await problemsIn('content/parts/half-known.yaml')).toEqual([]);
  });

  test('a job that names a part which is still to be written: the first time it is told how', async () => {
    const path = 'content/jobs/with-new.yaml';
    const person = new Typed(
      ...['Job of a new amplifier', 'amp, ampp', 'amp, own-amp', 'amp, own-amp', '', ...enters(3), ''],
    );
    const { status, out } = await shop.answered(person, 'new', 'job', 'with-new', '--vehicle', 'wagon');
    expect(person.refused[0]).toMatch(
      /there is no part "ampp"; .*rackleaf new part ampp --kind KIND writes it/,
    );
    expect(person.refused[1]).toMatch(
      /rackleaf new part own-amp --kind KIND writes it; Enter once more takes it/,
    );
    expect([status, out]).toEqual([2, path]);
    expect(shop.read(path)).toMatch(
      /^ {2}# Still to be written: .*own-amp.*\n(?: {2}# .*\n)* {2}amp: \{ part: own-amp/m,
    );
    const flags = Object.entries(leaflets.amplifier).flatMap(([key, lines]) =>
      lines.flatMap((one) => [`--${key}`, one]),
    );
    const part = await shop.run('new', 'part', 'own-amp', '--kind', 'amplifier', '--title', 'Own', ...flags);
    expect(part.status).toBe(0);
    expect((await problemsIn(path)).join()).not.toContain('own-amp');
  });

  test('by flags as well', async () => {
    const line = [
      'new',
      'job',
      'by-flags',
      '--vehicle',
      'wagon',
      '--title',
      'By flags',
      '--device',
      'amp, nothing-such',
    ];
    const { status, out, told } = await shop.run(...line);
    expect([status, out]).toEqual([2, 'content/jobs/by-flags.yaml']);
    expect(told).toMatch(/is written, and .* still to be written in it: comments tell what/);
    expect(shop.read('content/jobs/by-flags.yaml')).toContain('# Still to be written:');
  });
});
