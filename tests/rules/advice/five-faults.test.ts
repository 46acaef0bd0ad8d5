import { expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { jobOf } from '../../plan/plan-small-shop.ts';
import { inParts, inVehicle } from '../../plan/shop-changes.ts';
import { inJob, withBoard } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';

/** Five faults that have nothing to do with one another, in the order in which they are to be mended. */
const faults: readonly (readonly [rule: string, fault: Change, mended: Change | null])[] = [
  [
    'terminal-unaccounted',
    inJob('  sub: { part', '  spare: { part: holder-a, in: bay }\n  sub: { part'),
    null,
  ],
  [
    'item-outside-board',
    inJob(
      'title: Bass amplifier\n    in: boot',
      'title: Bass amplifier\n    on: main\n    at: { x: 460 mm, y: 100 mm }\n    turn: 0',
    ),
    inJob(
      'title: Bass amplifier\n    in: boot',
      'title: Bass amplifier\n    on: main\n    at: { x: 200 mm, y: 100 mm }\n    turn: 0',
    ),
  ],
  [
    'edge-without-grommet',
    inVehicle(
      '{ zone: sill, length: 3 m }]\n    reaches',
      '{ zone: sill, length: 3 m, edge: true, through-hole: 19 mm }]\n    reaches',
    ),
    null,
  ],
  ['fuse-distance', inJob('to: main-fuse.IN, length: 6 in', 'to: main-fuse.IN, length: 60 in'), null],
  [
    'input-overdriven',
    inParts(
      'IN1: { role: signal-in, joint: phono, signal: 4 V }',
      'IN1: { role: signal-in, joint: phono, signal-range: 0.2 V to 3 V }',
    ),
    null,
  ],
];

/** The rules of the stops of a job with all faults behind some of them, as they are told. */
function stops(mended: number): readonly string[] {
  const changes = faults.flatMap(([, fault, instead], at) =>
    at >= mended ? [fault] : instead ? [instead] : [],
  );
  const job = jobOf(smallShop(withBoard(), ...changes));
  const { plan, remarks } = planKept(job);
  return judge(job, plan, remarks).flatMap(({ level, rule }) => (level === 'stop' ? [rule] : []));
}

test('of five faults at once the first that is told is the one to mend first, again and again', () => {
  const wanted = faults.map(([rule]) => rule);
  for (let mended = 0; mended <= faults.length; mended += 1) {
    const told = stops(mended).filter((rule) => wanted.includes(rule));
    expect([...new Set(told)], `${mended} mended`).toEqual(wanted.slice(mended));
  }
});

test('what only follows from a part that stands off the board comes behind it', () => {
  const told = stops(0);
  const ways = told.flatMap((rule, at) =>
    rule === 'wire-without-way' || rule === 'bend-too-tight' ? [at] : [],
  );
  for (const at of ways) expect(at).toBeGreaterThan(told.indexOf('item-outside-board'));
});
