import { describe, expect, test } from 'vitest';
import { everyFinding } from '../../../lib/model/finding.ts';
import { judge } from '../../../lib/rules/index.ts';
import { inJob } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { byId, jobOf } from '../plan-small-shop.ts';
import { addParts, inParts } from '../shop-changes.ts';

const black =
  '  black-4: { kind: wire, title: "4 AWG black", size: 4 AWG, insulation: 105 C, colour: BK, for: [ground] }\n';

/** Reels of 1/0 AWG beside those of 4 and 8 AWG. */
const thick: readonly Change[] = [
  inParts(
    black,
    `${black}  black-0: { kind: wire, title: "1/0 AWG black", size: 1/0 AWG, insulation: 105 C, colour: BK, for: [ground] }
  red-0: { kind: wire, title: "1/0 AWG red", size: 1/0 AWG, insulation: 105 C, colour: RD, for: [power] }
`,
  ),
  [
    'content/shop.yaml',
    '  black-4: {',
    '  black-0: { reels: [60 ft] }\n  red-0: { reels: [60 ft] }\n  black-4: {',
  ],
];
/** The feed of the amplifier takes up to 1/0 AWG, its ground less. */
const ports = (ground: string): readonly Change[] => [
  inParts(
    'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
    'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 1/0 AWG } }',
  ),
  inParts(
    'GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
    `GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: ${ground} } }`,
  ),
];
const power = (fuse: string, watt: string): readonly Change[] => [
  inParts('fuse: 60 A, amplifier-class', `fuse: ${fuse}, amplifier-class`),
  inParts('power: 300 W }]', `power: ${watt} }]`),
];
const reducer = addParts(
  'reducer-a: { kind: terminal, title: Reducer, form: reducer, takes: { from: 1/0 AWG, to: 1/0 AWG }, pin: 4 AWG, strip: 15 mm }',
);
/** A feed so long that its drop asks for 1/0 AWG, where its fuse of 60 A would do with 8 AWG. */
const long: readonly Change[] = [
  ...thick,
  ...ports('4 AWG'),
  ...power('60 A', '420 W'),
  inJob('to: amp.B+ }', 'to: amp.B+, length: 30 ft }'),
];

function planned(...changes: readonly Change[]) {
  const job = jobOf(smallShop(...changes));
  const { plan, remarks } = planKept(job);
  const findings = everyFinding(judge(job, plan, remarks));
  const about = (rule: string) => findings.filter((finding) => finding.rule === rule);
  return {
    plan,
    feed: byId(plan.power.conductors, 'feed'),
    ground: byId(plan.power.conductors, 'ground'),
    fuse: byId(plan.power.fuses, 'main-fuse'),
    stops: findings.filter(({ level }) => level === 'stop').map(({ rule }) => rule),
    about,
  };
}

describe('a feed that its drop makes thicker than the port of its ground takes', () => {
  test('the ground is the largest that its port takes; what it falls short by is told, and what would mend it', () => {
    const { feed, ground, stops, about } = planned(...long);
    expect([feed.size.label, ground.size.label, stops]).toEqual(['1/0 AWG', '4 AWG', []]);
    expect(ground.reason).toMatch(/4 AWG: the largest that fits.*feed, 1\/0 AWG; 1\/0 AWG: amp.GND takes/);
    // ASTM B258: 41,742 of 105,530 circular mils.
    expect(about('ground-under-feed')).toEqual([
      expect.objectContaining({
        level: 'caution',
        message: expect.stringMatching(/conducts 39\.5\d* %/),
        remedy: expect.stringMatching(/amp.GND takes at most 4 AWG: .*a reducer for 1\/0 AWG/),
      }),
    ]);
  });

  test('a reducer of the catalogue brings the full size in, and the pick list counts it', () => {
    const { plan, ground, stops, about } = planned(...long, reducer);
    expect([ground.size.label, stops]).toEqual(['1/0 AWG', []]);
    expect(byId(plan.wires, 'ground').ends[0].part).toBe('reducer-a');
    expect(plan.pick.find(({ part }) => part === 'reducer-a')?.quantity).toBe(1);
    expect(about('ground-under-feed')).toEqual([]);
  });

  test('a reducer goes on one conductor: where two share the port it counts for neither', () => {
    const { ground, stops } = planned(
      ...long,
      reducer,
      inParts('to: 4 AWG } }\n      REM', 'to: 4 AWG }, conductors: 2 }\n      REM'),
      inJob(
        '  turn-on: {',
        '  second: { from: amp.GND, to: body.cargo, length: 12 in, size: 8 AWG }\n  turn-on: {',
      ),
    );
    expect(ground.size.label).toBe('4 AWG');
    expect(stops).not.toContain('conductor-none-fits');
  });

  test('no reel of grounds is as thick as the feed: the thickest there is, with the caution', () => {
    const [withReels, ...rest] = long;
    if (!withReels) throw new Error('There are no reels.');
    const [file, found, instead] = withReels;
    const { ground, stops, about } = planned(
      [
        file,
        found,
        instead.replace(
          'size: 1/0 AWG, insulation: 105 C, colour: BK',
          'size: 6 AWG, insulation: 105 C, colour: BK',
        ),
      ],
      ...rest,
    );
    expect([ground.size.label, stops]).toEqual(['4 AWG', []]);
    expect(about('ground-under-feed')).toHaveLength(1);
  });
});

describe('a fuse whose ground can not be had as large as it asks for', () => {
  // 33 CFR 183.425, Table 5: 4 AWG of 105 C carries 160 A, at 50 C 0.85 of it, 136 A; 1/0 AWG 242 A. Common practice, no
  // source: 1050 W of class D at 13.8 V are 102 A, some more at what is left of it; large bolt-in fuses are made for 125
  // and 150 A.
  const heavy = [...thick, ...power('150 A', '1050 W')];

  test('is the next rating below that the ground still carries', () => {
    const { fuse, ground, stops } = planned(...heavy, ...ports('4 AWG'));
    expect(fuse.ratingA).toBe(125);
    expect(fuse.reason).toMatch(/the limit is ampacity of ground at its thickest, 136 A/);
    expect([ground.size.label, ground.ampacityA, stops]).toEqual(['4 AWG', 136, []]);
  });

  test('keeps its margin where the ground port takes what it asks for', () => {
    const { fuse, ground, stops } = planned(...heavy, ...ports('1/0 AWG'));
    expect([fuse.ratingA, ground.size.label, stops]).toEqual([150, '1/0 AWG', []]);
  });

  test('no lawful rating is left: the ground is a stop that says which reducer, port or fuse would do', () => {
    // 8 AWG: 80 A times 0.85 is 68 A, under the 116 A that flow.
    const { fuse, about } = planned(...heavy, ...ports('8 AWG'));
    expect(fuse.ratingA).toBe(150);
    expect(about('conductor-none-fits')).toEqual([
      expect.objectContaining({
        level: 'stop',
        message: expect.stringMatching(
          /ground must carry 150 A: 1\/0 AWG is the smallest .* amp.GND takes at most 8 AWG/,
        ),
        remedy: expect.stringMatching(
          /a reducer for 1\/0 AWG with a pin of 8 AWG or less .*amp.GND takes 1\/0 AWG.* at most 68 A/,
        ),
      }),
    ]);
  });
});

describe('a conductor that no cable serves', () => {
  test('for its current: the stop says what the best one carries, and where', () => {
    const { about } = planned(
      ...power('250 A', '2000 W'),
      inJob('in: bay }', 'in: bay, fuse: 200 A }'),
      inParts(
        'takes: { from: 8 AWG, to: 4 AWG } }\n      GND',
        'takes: { from: 8 AWG, to: 1/0 AWG } }\n      GND',
      ),
    );
    expect(about('conductor-none-fits')).toContainEqual(
      expect.objectContaining({
        message: expect.stringMatching(/^feed must carry 200 A, .* 136 A: 4 AWG, in its zone engine-bay/),
        remedy: expect.stringMatching(/at most 136 A/),
      }),
    );
  });

  test('for its zone: the stop names the zone and its temperature', () => {
    const { about } = planned(
      inParts('size: 4 AWG, insulation: 105 C, colour: RD', 'size: 4 AWG, insulation: 60 C, colour: RD'),
      inParts('size: 8 AWG, insulation: 105 C, colour: RD', 'size: 8 AWG, insulation: 60 C, colour: RD'),
    );
    expect(about('conductor-none-fits')).toContainEqual(
      expect.objectContaining({ message: expect.stringMatching(/^feed passes engine-bay, at 85 C/) }),
    );
  });
});
