import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateRawSync } from 'node:zlib';
import { afterAll, describe, expect, it } from 'vitest';
import { isDrawn, isLongRun } from '../long-run.ts';
import { ColdShops, filesBelow, seen } from './seen.ts';
import { type ShopFolder, ShopWithOwnStore } from './shop-folder.ts';

/** What stands in an entry before its packed value: its first line, its digest, its key. */
const headBytes = 16 + 32 + 32;
const job = 'content/jobs/demo.yaml';
const parts = 'content/parts/all.yaml';

/** A second job of the shop, which has everything of the first. */
const another = (shop: ShopFolder, title: string): string =>
  shop
    .read(job)
    .replace('id: demo', 'id: second')
    .replace(/^title: .*$/m, `title: ${title}`);

const withErrors = new Set(['an error in the job', 'an error in a part', 'a frozen plan cut short']);

type Change = readonly [
  what: string,
  change: (shop: ShopFolder) => unknown,
  look?: 'with the next' | 'always',
];

/**
 * The long run looks after each change alone. The short one makes each as well, but looks at some with the one after
 * them: at several texts or several figures of one file, at what is taken away, which would stay in sight, and of the
 * rest at every second one.
 */
function looksAfter(changes: readonly Change[]): [string, (shop: ShopFolder) => Promise<void>][] {
  const looks: [string, (shop: ShopFolder) => Promise<void>][] = [];
  let before: readonly Change[] = [];
  let drawn = 0;
  const waits = (look: Change[2]): boolean => {
    if (isLongRun || look === 'always') return false;
    if (look === 'with the next') return true;
    drawn += 1;
    return !isDrawn(drawn, { oneIn: 2 });
  };
  for (const one of changes) {
    const all = [...before, one];
    before = waits(one[2]) ? all : [];
    if (before.length === 0)
      looks.push([
        all.map(([what]) => what).join(', '),
        async (shop) => {
          for (const [, change] of all) await change(shop);
        },
      ]);
  }
  return looks;
}

describe('with results kept, after every kind of change in turn', () => {
  const shop = new ShopWithOwnStore();
  const cold = new ColdShops();
  afterAll(() => shop.remove());

  it.each(
    looksAfter([
      ['nothing', () => undefined, 'always'],
      ['the title of a device', () => shop.change(job, 'title: Bass amplifier', 'title: Amplifier for bass')],
      ['the same title again', () => shop.change(job, 'title: Amplifier for bass', 'title: Bass amplifier')],
      [
        'the title of the job',
        () => shop.change(job, 'title: One amplifier', 'title: An amplifier'),
        'with the next',
      ],
      [
        'what is noted on the job',
        () => shop.change(job, 'stays in its bag.', 'stays in its box.'),
        'with the next',
      ],
      [
        'why a terminal is left open',
        () => shop.change(job, 'radio.OUT2: one channel is used', 'radio.OUT2: the other is spare'),
      ],
      ['a length', () => shop.change(job, 'length: 12 in', 'length: 14 in'), 'with the next'],
      ['a filter', () => shop.change(job, 'corner: 80 Hz', 'corner: 70 Hz'), 'with the next'],
      [
        'the length of a speaker lead',
        () => shop.change(job, 'length: 3 ft', 'length: 4 ft'),
        'with the next',
      ],
      ['the colour of a wire', () => shop.change(job, 'length: 4 ft }', 'length: 4 ft, colour: WH/BK }')],
      [
        'a line above all others, that says nothing',
        () => shop.write(job, `# a note\n${shop.read(job)}`),
        'with the next',
      ],
      ['the customer', () => shop.change(job, 'contact: 555 0199', 'contact: 555 0198')],
      [
        'a house rule',
        () => shop.change('content/shop.yaml', '# House', 'rules: { fuse-margin: 130 % }\n# House'),
        'with the next',
      ],
      [
        'a house rule of sound',
        () => shop.change('content/shop.yaml', '130 % }', '130 %, speaker-loss: 0.4 dB }'),
        'with the next',
      ],
      [
        'the gains of all channels',
        () => shop.change('content/shop.yaml', 'loss: 0.4 dB', 'loss: 0.4 dB, gain-overlap: 4 dB'),
        'with the next',
      ],
      [
        'the room that is asked for round a board',
        () => shop.change('content/shop.yaml', 'lap: 4 dB', 'lap: 4 dB, space-clearance: 2 in'),
        'with the next',
      ],
      [
        'what is in stock',
        () => shop.change('content/shop.yaml', 'large-60: { pieces: 2 }', 'large-60: { pieces: 1 }'),
      ],
      ['a figure of a part', () => shop.change(parts, 'current: 200 A', 'current: 190 A'), 'with the next'],
      [
        'the title of a part',
        () => shop.change(parts, 'title: Holder', 'title: Fuse holder'),
        'with the next',
      ],
      [
        'a part more',
        () => {
          const [, part = ''] = /\n( {2}holder-a:\n(?: {4}.*\n)+)/.exec(shop.read(parts)) ?? [];
          shop.write(
            'content/parts/more.yaml',
            `rackleaf: 1\nparts:\n${part.replace('holder-a', 'holder-b')}`,
          );
        },
      ],
      ['a part less', () => rmSync(join(shop.root, 'content/parts/more.yaml')), 'with the next'],
      [
        'the vehicle',
        () => shop.change('content/vehicles/wagon.yaml', 'vehicle-load: 45 A', 'vehicle-load: 46 A'),
      ],
      [
        'a vehicle more',
        () => {
          const wagon = shop.read('content/vehicles/wagon.yaml');
          shop.write(
            'content/vehicles/coupe.yaml',
            wagon.replace('id: wagon', 'id: coupe').replace('Estate car', 'Coupe'),
          );
        },
        'with the next',
      ],
      ['the vehicle that the job is for', () => shop.change(job, 'vehicle: wagon', 'vehicle: coupe')],
      [
        'a guide',
        () => shop.change('content/guides/gain.md', 'Use a meter.', 'Use a good meter.'),
        'with the next',
      ],
      ['a job more', () => shop.write('content/jobs/second.yaml', another(shop, 'Another'))],
      [
        'the other job',
        () => shop.write('content/jobs/second.yaml', another(shop, 'Yet another')),
        'with the next',
      ],
      ['a job less', () => rmSync(join(shop.root, 'content/jobs/second.yaml')), 'with the next'],
      ['an error in the job', () => shop.change(job, 'to: amp.REM', 'to: amp.RME'), 'always'],
      ['the error mended', () => shop.change(job, 'to: amp.RME', 'to: amp.REM'), 'with the next'],
      ['an error in a part', () => shop.change(parts, 'kind: battery\n', 'kind: batery\n')],
      ['that mended', () => shop.change(parts, 'kind: batery\n', 'kind: battery\n'), 'with the next'],
      ['a release', () => shop.run('release', 'demo')],
      [
        'a job beside what is promised',
        () => shop.write('content/jobs/second.yaml', another(shop, 'Beside')),
      ],
      ['what is promised, built in', () => shop.change(job, 'status: released', 'status: installed')],
      ['that taken back', () => shop.change(job, 'status: installed', 'status: released'), 'with the next'],
      [
        'less on the shelf than is promised',
        () => shop.change('content/shop.yaml', 'large-60: { pieces: 1 }', 'large-60: { pieces: 0 }'),
      ],
      ['that job away', () => rmSync(join(shop.root, 'content/jobs/second.yaml')), 'with the next'],
      [
        'a house rule under the released plan',
        () => shop.change('content/shop.yaml', '130 %', '140 %'),
        'with the next',
      ],
      [
        'what the frozen plan holds',
        () =>
          shop.change('content/jobs/demo/A.plan.json', '"title": "An amplifier"', '"title": "One amplifier"'),
      ],
      [
        'a frozen plan cut short',
        () =>
          shop.write(
            'content/jobs/demo/A.plan.json',
            shop.read('content/jobs/demo/A.plan.json').slice(0, 900),
          ),
        'always',
      ],
      [
        'the released plan gone',
        () => rmSync(join(shop.root, 'content/jobs/demo/A.plan.json')),
        'with the next',
      ],
      ['the site taken away', () => rmSync(join(shop.root, 'dist'), { recursive: true }), 'always'],
      [
        'a page of the site altered',
        () => writeFileSync(join(shop.root, 'dist/index.html'), 'altered'),
        'always',
      ],
      [
        'all that is kept taken away',
        () => rmSync(join(shop.root, '.rackleaf/kept'), { recursive: true }),
        'always',
      ],
      [
        'every other entry cut short, the rest altered',
        () => {
          const kept = join(shop.root, '.rackleaf/kept');
          for (const [at, [path, text]] of Object.entries(filesBelow(kept)).entries()) {
            const middle = Math.floor(text.length / 2);
            const altered = `${text.slice(0, middle)}${text[middle] === 'x' ? 'y' : 'x'}${text.slice(middle + 1)}`;
            writeFileSync(join(kept, path), at % 2 === 0 ? text.slice(0, middle) : altered, 'latin1');
          }
        },
        'always',
      ],
    ]),
  )(
    '%s: the same as from cold, byte for byte',
    async (what, change) => {
      await change(shop);
      const now = await seen(shop);
      expect(now.build.status).toBe([...withErrors].some((one) => what.endsWith(one)) ? 2 : 0);
      expect(now).toEqual(await cold.seen(shop));
    },
    600_000,
  );

  it('holds no private value among what is kept', () => {
    const kept = Object.values(filesBelow(join(shop.root, '.rackleaf/kept'))).map((entry) =>
      inflateRawSync(Buffer.from(entry, 'latin1').subarray(headBytes)).toString('latin1'),
    );
    expect(kept.some((text) => text.includes('Bass amplifier'))).toBe(true);
    for (const value of ['Ada Specimen', '555 0198', 'QZX 471'])
      expect(kept.filter((text) => text.includes(value))).toEqual([]);
  });
});
