import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { inJob } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { jobsIn } from '../../shops/shop-once.ts';
import { planKept } from '../plan-kept.ts';
import { inParts, inShop, inVehicle } from '../shop-changes.ts';

/** What may be wrong with a job: of each row at most one is drawn. */
const wrongs: readonly (readonly Change[])[] = [
  [
    inParts('power: 300 W', 'power: 30 kW'),
    inParts('power: 300 W', 'power: 1 mW'),
    inParts('power: 300 W', 'power: 0 W'),
  ],
  [
    inParts('fuse: 60 A, amplifier-class', 'fuse: 0 A, amplifier-class'),
    inParts('fuse: 60 A, amplifier-class', 'fuse: 3 kA, amplifier-class'),
    inParts('fuse: 60 A, amplifier-class', 'fuse: 1 A, amplifier-class'),
    inParts(
      'fuse: 60 A, amplifier-class: class-d',
      'fuse: 60 A, amplifier-class: class-d, efficiency: { full: 100 %, eighth: 1 % }',
    ),
  ],
  [
    inJob('length: 6 in', 'length: -6 in'),
    inJob('length: 6 in', 'length: 0 in'),
    inJob('length: 6 in', 'length: 9 km'),
    inJob(', length: 6 in', ''),
  ],
  [
    inJob('to: amp.B+ }', 'to: "amp.|" }'),
    inJob('to: amp.B+ }', 'to: amp.B }'),
    inJob('to: amp.B+ }', 'to: main-fuse.IN }'),
    inJob('to: amp.B+ }', 'to: amp.GND }'),
    inJob('to: amp.B+ }', 'to: amp.B+, size: 40 AWG }'),
    inJob('to: amp.B+ }', 'to: amp.B+, size: 26 AWG }'),
    inJob('to: amp.B+ }', 'to: amp.B+, size: 500 mm2 }'),
    inJob('to: amp.B+ }', 'to: amp.B+, wire: black-4 }'),
    inJob('to: amp.B+ }', 'to: amp.B+, colour: VT }'),
  ],
  [
    inJob('in: bay }', 'in: bay, fuse: 0 A }'),
    inJob('in: bay }', 'in: bay, fuse: 33 A }'),
    inJob('in: bay }', 'in: bay, fuse: 500 A }'),
    inParts('fuse-form: large-bolt-in\n    current: 200 A', 'fuse-form: micro-blade\n    current: 200 A'),
    inParts('current: 200 A', 'current: 0 A'),
  ],
  [
    inJob('  ground: { from: amp.GND, to: body.cargo, length: 12 in }\n', ''),
    inJob('to: body.cargo', 'to: body.engine'),
    inJob('to: body.cargo', 'to: battery.POS'),
    inJob('to: body.cargo', 'to: body.roof'),
  ],
  [inVehicle('  strap: { from: battery.NEG, to: body.engine, size: 4 AWG, length: 300 mm }\n', '')],
  [inVehicle('  alternator: { part: generator-a, zone: engine-bay }\n', '')],
  [inVehicle('vehicle-load: 45 A\n', 'vehicle-load: 4.5 kA\n'), inVehicle('vehicle-load: 45 A\n', '')],
  [
    inShop('  red-4: { reels: [30 ft] }\n', ''),
    inShop(
      'red-4: { reels: [30 ft] }\n  black-4: { reels: [30 ft] }\n  red-8: { reels: [30 ft] }\n  black-8: { reels: [30 ft] }',
      'red-4: { reels: [] }',
    ),
  ],
  [inShop('  large-60: { pieces: 2 }\n  large-80: { pieces: 2 }\n', '')],
  [
    inParts(', colour: RD, for: [power] }\n  black-4', ', colour: RD, for: [ground] }\n  black-4'),
    inParts('8 AWG red", size: 8 AWG, insulation: 105 C', '8 AWG red", size: 8 AWG, insulation: 40 C'),
  ],
  [
    inJob(
      'control: { route: right-sill, links: [turn-on] }',
      'control: { route: right-sill, links: [turn-on, tail] }',
    ),
  ],
  [
    inJob('  turn-on: { from: radio.REM, to: amp.REM }\n', ''),
    inJob('from: radio.REM, to: amp.REM', 'from: main-fuse.OUT, to: amp.REM'),
    inParts('current: 300 mA', 'current: 1 mA'),
  ],
  [
    inParts('cold-cranking: 600 A', 'cold-cranking: 600 A\n    resistance: 0 mohm'),
    inParts('cold-cranking: 600 A', 'cold-cranking: 600 A\n    resistance: 5 ohm'),
    inParts('cold-cranking: 600 A', 'cold-cranking: 60 kA'),
  ],
  [
    inShop('stock:\n', 'rules: { lug-resistance: 0 mohm, joint-resistance: 0 mohm }\nstock:\n'),
    inShop('stock:\n', 'rules: { voltage-sizing: 1 V }\nstock:\n'),
    inShop('stock:\n', 'rules: { drop-limit: 0.01 %, ground-drop-limit: 1 mV }\nstock:\n'),
    inShop('stock:\n', 'rules: { zone-engine-bay: 300 C }\nstock:\n'),
  ],
];

/** A few of them at once: with many, the reader would refuse nearly every job. */
const drawn = fc
  .subarray([...wrongs.keys()], { minLength: 2, maxLength: 4 })
  .chain((rows) => fc.tuple(...rows.map((row) => fc.constantFrom(...(wrongs[row] ?? [])))));

/** A slot that nothing was put in, or a value that is none. A remedy may end in a key, such as `wire:`. */
const emptySlot =
  /undefined|\bNaN\b|Infinity|\bnull\b|\[object| {2}|""|''|“”|‘’|\(\s*\)|\.\||: ?\.|(?<! [a-z-]+):$|[,;]\s*[.,;]|[,;]\s*$|^\s|\s$|unknown number/;

/** Every text that a reader of the job may be told, with where it stands. */
function textsOf(changes: readonly Change[]): { readonly at: string; readonly text: string }[] {
  const { jobs, problems } = jobsIn(smallShop(...changes));
  const told = problems.flatMap(({ where, message, expected, remedy }) =>
    [message, expected, remedy].map((text) => ({ at: where.path, text })),
  );
  const planned = jobs.flatMap((job) => {
    const { plan, remarks } = planKept(job);
    const findings = judge(job, plan, remarks);
    expect(JSON.stringify(plan)).not.toMatch(/NaN|undefined|Infinity/);
    return [
      ...findings.flatMap(({ rule, message, remedy, source }) =>
        [message, remedy, source].map((text) => ({ at: rule, text })),
      ),
      ...[...plan.power.conductors, ...plan.power.fuses].map(({ id, reason }) => ({ at: id, text: reason })),
      ...plan.power.points.flatMap(({ name, reason }) =>
        reason === undefined ? [] : [{ at: name, text: reason }],
      ),
    ];
  });
  return [...told, ...planned].flatMap(({ at, text }) => (text === undefined ? [] : [{ at, text }]));
}

test('no message, reason or remedy of a job has a slot that nothing was put in', () => {
  fc.assert(
    fc.property(drawn, (changes) => {
      expect(textsOf(changes).filter(({ text }) => emptySlot.test(text))).toEqual([]);
    }),
    { numRuns: 80 },
  );
});

test('each thing alone is told as well, and none goes without a word', () => {
  for (const change of wrongs.flat()) {
    const texts = textsOf([change]);
    expect(texts.length).toBeGreaterThan(0);
    expect(
      texts.filter(({ text }) => emptySlot.test(text)),
      change[2],
    ).toEqual([]);
  }
});
