import { describe, expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { inJob, partsFile } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { byId, jobOf } from '../plan-small-shop.ts';

const shopFile = 'content/shop.yaml';
const black =
  '  black-4: { kind: wire, title: "4 AWG black", size: 4 AWG, insulation: 105 C, colour: BK, for: [ground] }\n';
/** A ground reel of another resistance than its gauge tells, beside thicker ones. */
const reels = (how: string): Change => [
  partsFile,
  black,
  `${black.replace('105 C,', `105 C, ${how},`)}  black-2: { kind: wire, title: "2 AWG black", size: 2 AWG, insulation: 105 C, colour: BK, for: [ground] }\n`,
];
const widePorts: Change = [
  partsFile,
  'GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
  'GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 1/0 AWG } }',
];
const stocked: Change = [shopFile, '  black-4: {', '  black-2: { reels: [30 ft] }\n  black-4: {'];

function groundOf(...changes: readonly Change[]) {
  const job = jobOf(smallShop(widePorts, ...changes));
  const { plan, remarks } = planKept(job);
  return {
    feed: byId(plan.power.conductors, 'feed').size.label,
    ground: byId(plan.power.conductors, 'ground'),
    cautions: judge(job, plan, remarks).filter(({ rule }) => rule === 'ground-under-feed'),
  };
}

describe('a ground is sized by the measure that it is judged by', () => {
  test('of the same copper: the gauge of its feed', () => {
    const { feed, ground, cautions } = groundOf();
    expect([feed, ground.size.label]).toEqual(['4 AWG', '4 AWG']);
    expect(ground.reason).toMatch(/at least as large as its feed feed/);
    expect(cautions).toEqual([]);
  });

  // 4 AWG has 0.815 mohm per metre of solid copper (ASTM B258); 1.2 is a cable sold short of copper.
  test.each([
    ['measured short of copper', 'measured: 1.2 mohm/m'],
    ['of copper-clad aluminium', 'material: copper-clad-aluminium'],
  ])('%s: the next gauge that conducts as well, and no caution is left', (_, how) => {
    const { feed, ground, cautions } = groundOf(reels(how), stocked);
    expect([feed, ground.size.label]).toEqual(['4 AWG', '2 AWG']);
    expect(cautions).toEqual([]);
  });

  test('a stranding that the shop sets counts for cables that are not measured', () => {
    // At 2 % a stranded 4 AWG has 0.831 mohm per metre and a measured 0.85 lies above it; at 10 % it has 0.897.
    const stranding: Change = [shopFile, 'stock:\n', 'rules: { stranding: 10 % }\nstock:\n'];
    expect(groundOf(reels('measured: 0.85 mohm/m'), stocked).ground.size.label).toBe('2 AWG');
    const lax = groundOf(reels('measured: 0.85 mohm/m'), stocked, stranding);
    expect(lax.ground.size.label).toBe('4 AWG');
    expect(lax.cautions).toEqual([]);
  });
});

const thick: readonly Change[] = [
  [
    partsFile,
    black,
    `${black}  black-0: { kind: wire, title: "1/0 AWG black", size: 1/0 AWG, insulation: 105 C, colour: BK, for: [ground] }
  red-0: { kind: wire, title: "1/0 AWG red", size: 1/0 AWG, insulation: 105 C, colour: RD, for: [power] }
`,
  ],
  [shopFile, '  black-4: {', '  black-0: { reels: [30 ft] }\n  red-0: { reels: [30 ft] }\n  black-4: {'],
];
/** The amplifier on a board, behind a block that a 1/0 AWG feed reaches; its own feed is a stub of 8 AWG. */
const onBoard: readonly Change[] = [
  inJob(
    'main-fuse: { part: holder-a, in: bay }',
    'main-fuse: { part: holder-a, in: bay }\n  block: { part: block-a, on: main, at: { x: 120 mm, y: 240 mm } }',
  ),
  inJob('    in: boot\n    settings:', '    on: main\n    at: { x: 250 mm, y: 120 mm }\n    settings:'),
  inJob(
    'feed: { from: main-fuse.OUT, to: amp.B+ }',
    'feed: { from: main-fuse.OUT, to: block.IN, size: 1/0 AWG }\n  stub: { from: block.OUT1, to: amp.B+, size: 8 AWG }',
  ),
  inJob(
    'runs:\n',
    'boards:\n  main:\n    sheet: ply-a\n    outline: { rectangle: { width: 450 mm, height: 300 mm } }\n    fixings: { a: { point: p1, fixing: bolt-a }, b: { point: p2, fixing: bolt-a } }\nruns:\n',
  ),
];

describe('the common ground of a board is sized by what feeds the board', () => {
  const boardGround = (...changes: readonly Change[]) => groundOf(...thick, ...onBoard, ...changes);

  test('a thick feed, a thin stub: the ground of the one device is the ground of the board', () => {
    const { ground, cautions } = boardGround();
    expect(ground.size.label).toBe('1/0 AWG');
    expect(ground.reason).toMatch(/the ground of main is at least as large as its feed feed, 1\/0 AWG/);
    expect(cautions).toEqual([]);
  });

  test('a ground that the job gives stays, and is told', () => {
    const { ground, cautions } = boardGround(
      inJob('to: body.cargo, length: 12 in }', 'to: body.cargo, length: 12 in, size: 8 AWG }'),
    );
    expect([ground.size.label, ground.chosen]).toEqual(['8 AWG', 'given']);
    // ASTM B258: 8.37 of 53.5 mm2.
    expect(cautions).toEqual([
      expect.objectContaining({ message: expect.stringMatching(/conducts 15\.6\d? %/) }),
    ]);
  });
});

test('of two feeds of a device the ground takes both back', () => {
  const { ground, cautions } = groundOf(
    ...thick,
    inJob(
      'main-fuse: { part: holder-a, in: bay }',
      'main-fuse: { part: holder-a, in: bay, fuse: 80 A }\n  other-fuse: { part: holder-a, in: bay, fuse: 80 A }',
    ),
    inJob(
      'feed: { from: main-fuse.OUT, to: amp.B+ }',
      'feed: { from: main-fuse.OUT, to: amp.B+ }\n  other-tail: { from: battery.POS, to: other-fuse.IN, length: 6 in }\n  other: { from: other-fuse.OUT, to: amp.B+, length: 10 ft }',
    ),
    [partsFile, 'fuse: 60 A, amplifier-class', 'fuse: 180 A, amplifier-class'],
  );
  expect(ground.neededA).toBe(80 + 80);
  expect(cautions).toEqual([]);
});
