import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { jobOf } from '../plan-small-shop.ts';

const reels = ['red-4', 'black-4', 'red-8', 'black-8'] as const;
const fuses = ['large-60', 'large-80'] as const;
const anyShelf = fc.record({ reels: fc.subarray([...reels]), fuses: fc.subarray([...fuses]) });

/** The stops of the small shop's job with just these reels and fuses on the shelf, and whether every fuse has a rating. */
function planWith(shelf: readonly string[]) {
  const missing: Change[] = [
    ...reels.map((id) => [id, `${id}: { reels: [30 ft] }`, `${id}: { reels: [1 ft] }`] as const),
    ...fuses.map((id) => [id, `${id}: { pieces: 2 }`, `${id}: { pieces: 0 }`] as const),
  ].flatMap(([id, found, instead]): Change[] =>
    shelf.includes(id) ? [] : [['content/shop.yaml', found, instead]],
  );
  const job = jobOf(smallShop(...missing));
  const { plan, remarks } = planKept(job);
  const stops = judge(job, plan, remarks).filter(({ level }) => level === 'stop');
  return { stops: stops.length, feasible: plan.power.fuses.every(({ ratingA }) => ratingA !== null) };
}

const size = { '0': '1/0 AWG', '2': '2 AWG' } as const;
const wire = (colour: 'red' | 'black', gauge: keyof typeof size): string =>
  `  ${colour}-${gauge}: { kind: wire, title: "${size[gauge]} ${colour}", size: ${size[gauge]}, insulation: 105 C, colour: ${colour === 'red' ? 'RD' : 'BK'}, for: [${colour === 'red' ? 'power' : 'ground'}] }\n`;
/** What a shop may buy: cables thicker than any that it has, and what brings them into a port for 4 AWG. */
const wares = {
  'red-0': wire('red', '0'),
  'black-0': wire('black', '0'),
  'red-2': wire('red', '2'),
  'black-2': wire('black', '2'),
  'reducer-0':
    '  reducer-0: { kind: terminal, title: Reducer, form: reducer, takes: { from: 1/0 AWG, to: 1/0 AWG }, pin: 4 AWG }\n',
} as const;
type Ware = keyof typeof wares;

/** The stops of a job whose ground has a smaller port than its feed, once the shop has bought some of the wares. */
function stopsWith(bought: readonly Ware[], power: string, fuse: string, feed: string): string[] {
  const parts = 'content/parts/all.yaml';
  const job = jobOf(
    smallShop(
      [parts, '  bolt-a:', `${bought.map((ware) => wares[ware]).join('')}  bolt-a:`],
      [parts, 'power: 300 W }]', `power: ${power} }]`],
      [parts, 'fuse: 60 A, amplifier-class', `fuse: ${fuse}, amplifier-class`],
      [
        parts,
        'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
        'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 1/0 AWG } }',
      ],
      ['content/jobs/demo.yaml', 'to: amp.B+ }', `to: amp.B+, length: ${feed} }`],
      [
        'content/shop.yaml',
        '  black-4: {',
        `${bought.map((ware) => `  ${ware}: { ${ware === 'reducer-0' ? 'pieces: 4' : 'reels: [60 ft]'} }\n`).join('')}  black-4: {`,
      ],
    ),
  );
  const { plan, remarks } = planKept(job);
  return judge(job, plan, remarks).flatMap(({ level, rule }) => (level === 'stop' ? [rule] : []));
}

test('cables and reducers that a shop buys never add a stop', () => {
  const names: Ware[] = ['red-0', 'black-0', 'red-2', 'black-2', 'reducer-0'];
  const [power, fuse, feed] = [
    fc.constantFrom('300 W', '500 W', '1200 W'),
    fc.constantFrom('60 A', '100 A', '150 A'),
    fc.constantFrom('4 ft', '30 ft'),
  ];
  fc.assert(
    fc.property(fc.subarray(names), fc.subarray(names), power, fuse, feed, (some, more, ...rest) => {
      const before = stopsWith(some, ...rest);
      const after = stopsWith([...new Set([...some, ...more])], ...rest);
      expect(after.length, `${before.join()} then ${after.join()}`).toBeLessThanOrEqual(before.length);
    }),
    { numRuns: 25 },
  );
});

test('more reels and fuses on the shelf never add a stop, nor take a rating away', () => {
  fc.assert(
    fc.property(anyShelf, anyShelf, (some, more) => {
      const few = [...some.reels, ...some.fuses];
      const before = planWith(few);
      const after = planWith([...few, ...more.reels, ...more.fuses]);
      expect(after.stops).toBeLessThanOrEqual(before.stops);
      expect(after.feasible || !before.feasible).toBe(true);
    }),
    { numRuns: 12 },
  );
});
