import { describe, expect, test } from 'vitest';
import { everyFinding, type Finding } from '../../lib/model/finding.ts';
import { judge } from '../../lib/rules/index.ts';
import { planKept } from '../plan/plan-kept.ts';
import { jobOf } from '../plan/plan-small-shop.ts';
import { addParts, inParts, inShop, inVehicle } from '../plan/shop-changes.ts';
import { inJob } from '../read/problem-case.ts';
import { type Change, smallShop } from '../read/small-shop.ts';

function found(...changes: readonly Change[]): readonly Finding[] {
  const job = jobOf(smallShop(...changes));
  const { plan, remarks } = planKept(job);
  return judge(job, plan, remarks);
}

const nameOf = ({ level, rule, related }: Finding): string => `${level} ${rule} ${related[0] ?? ''}`;
/** What the small shop as it stands is told anyway: lugs that it does not stock, data that it does not have. */
const anyway = new Set(found().map(nameOf));

/** What a fault adds: at the top, and in all. */
function added(...changes: readonly Change[]) {
  const findings = found(...changes);
  return {
    top: findings.map(nameOf).filter((name) => !anyway.has(name)),
    every: everyFinding(findings),
  };
}

const noFeedRun = inJob('  power: { route: left-sill, links: [feed], covering: loom-a }\n', '');
const noTurnOnRun = inJob('  control: { route: right-sill, links: [turn-on] }\n', '');
const speaker = 'speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }';
const reversed = [
  inVehicle('to: battery.POS', 'to: battery.NEG'),
  inVehicle('from: battery.NEG', 'from: battery.POS'),
];
const doubled = '  extra: { part: amp-a, in: boot, settings: { GAIN: fully down } }\n  sub: {';

type Fault = readonly [name: string, changes: readonly Change[], finding: string];

/** One fault each, and the one finding that it must give. */
const faults: readonly Fault[] = [
  [
    'the main feed forgotten',
    [inJob('  feed: { from: main-fuse.OUT, to: amp.B+ }\n', ''), noFeedRun],
    'stop device-without-supply amp',
  ],
  [
    'the lead from the battery forgotten',
    [inJob('  tail: { from: battery.POS, to: main-fuse.IN, length: 6 in }\n', '')],
    'stop terminal-unaccounted main-fuse.IN',
  ],
  [
    'the ground forgotten',
    [inJob('  ground: { from: amp.GND, to: body.cargo, length: 12 in }\n', '')],
    'stop device-without-ground amp',
  ],
  [
    'the turn-on forgotten',
    [inJob('  turn-on: { from: radio.REM, to: amp.REM }\n', ''), noTurnOnRun],
    'stop turn-on-missing amp.REM',
  ],
  [
    'the signal forgotten',
    [inJob('  signal: { from: radio.OUT1, to: amp.IN1, cable: lead, conductors: [left] }\n', '')],
    'stop terminal-unaccounted amp.IN1',
  ],
  ['the speaker forgotten', [inJob(`  ${speaker}\n`, '')], 'stop speaker-without-channel sub'],
  [
    'a battery without its strap',
    [inVehicle('  strap: { from: battery.NEG, to: body.engine, size: 4 AWG, length: 300 mm }\n', '')],
    'stop fitted-source-not-linked battery',
  ],
  [
    'an alternator without its charge lead',
    [inVehicle('  charge: { from: alternator.B+, to: battery.POS, size: 4 AWG, length: 1 m }\n', '')],
    'stop fitted-source-not-linked alternator',
  ],
  [
    'feed and ground of a device exchanged',
    [inJob('to: amp.B+ }', 'to: amp.GND }'), inJob('from: amp.GND', 'from: amp.B+')],
    'stop live-end-on-ground feed',
  ],
  [
    'the lead from the negative post',
    [inJob('from: battery.POS', 'from: battery.NEG')],
    'stop fuse-in-ground main-fuse',
  ],
  ['the battery of the vehicle the wrong way round', reversed, 'stop battery-reversed battery'],
  [
    'the battery the wrong way round for the job too',
    [...reversed, inJob('from: battery.POS', 'from: battery.NEG')],
    'stop battery-reversed battery',
  ],
  [
    'a ground lead on the positive post',
    [inJob('to: body.cargo', 'to: battery.POS')],
    'stop live-end-on-ground ground',
  ],
  ['the feed on the turn-on', [inJob('to: amp.B+ }', 'to: amp.REM }')], 'stop turn-on-always-live amp.REM'],
  ['the feed on an input', [inJob('to: amp.B+ }', 'to: amp.IN1 }')], 'stop live-end-on-signal feed'],
  ['the feed on a speaker output', [inJob('to: amp.B+ }', 'to: amp.CH1+ }')], 'stop live-end-on-signal feed'],
  [
    'the feed back on the fuse',
    [inJob('to: amp.B+ }', 'to: main-fuse.IN }')],
    'stop fuse-bypassed main-fuse',
  ],
  [
    'the turn-on from the battery',
    [inJob('from: radio.REM', 'from: battery.POS')],
    'stop turn-on-always-live amp.REM',
  ],
  [
    'the turn-on from behind the main fuse',
    [inJob('from: radio.REM', 'from: main-fuse.OUT')],
    'stop turn-on-always-live amp.REM',
  ],
  [
    'the turn-on from behind the main fuse, by a route that ends at the radio',
    [
      inJob('from: radio.REM', 'from: main-fuse.OUT'),
      inVehicle('{ title: Right sill, side: right,', '{ title: Right sill, side: right, ends: [radio],'),
    ],
    'stop turn-on-always-live amp.REM',
  ],
  [
    'the speaker back over the body, with its channel and another line read',
    [
      inJob(
        speaker,
        'plus: { from: amp.CH1+, to: sub.C1+, length: 3 ft }\n  minus: { from: sub.C1-, to: body.cargo, length: 3 ft }',
      ),
      inJob('notes:\n', 'as-built:\n  amp.1.dc-resistance: 3.4 ohm\n  amp.1.gain: 14.6 V\nnotes:\n'),
    ],
    'stop coil-to-body amp.1',
  ],
  ['the turn-on from ground', [inJob('from: radio.REM', 'from: body.cargo')], 'stop turn-on-missing amp.REM'],
  [
    'the feed past its fuse',
    [inJob('from: main-fuse.OUT, to: amp.B+', 'from: battery.POS, to: amp.B+')],
    'stop fuse-bypassed main-fuse',
  ],
  [
    'the feed from the wrong end of its fuse',
    [inJob('from: main-fuse.OUT, to: amp.B+', 'from: main-fuse.IN, to: amp.B+')],
    'stop fuse-bypassed main-fuse',
  ],
  [
    'a battery without its strap, with a reading that differs for it',
    [
      inVehicle('  strap: { from: battery.NEG, to: body.engine, size: 4 AWG, length: 300 mm }\n', ''),
      inJob('left-open:\n', 'as-built:\n  amp.voltage.idle: 12.9 V\nleft-open:\n'),
    ],
    'stop fitted-source-not-linked battery',
  ],
  [
    'a thin bass lead',
    [
      inJob('to: sub.C1, length: 3 ft', 'to: sub.C1, size: 18 AWG, length: 3 ft'),
      addParts(
        ...[
          ['white-18', 'WH'],
          ['striped-18', 'WH/BK'],
        ].map(
          ([id, colour]) =>
            `${id}: { kind: wire, title: "18 AWG", size: 18 AWG, insulation: 105 C, colour: ${colour}, for: [speaker] }`,
        ),
      ),
      inShop(
        '  white-12: {',
        '  white-18: { reels: [30 ft] }\n  striped-18: { reels: [30 ft] }\n  white-12: {',
      ),
    ],
    'caution bass-lead-thin speaker',
  ],
  [
    'a fuse far too large',
    [inJob('in: bay }', 'in: bay, fuse: 300 A }')],
    'stop fuse-over-ceiling main-fuse',
  ],
  [
    'a rating that no fuse is made in',
    [inJob('in: bay }', 'in: bay, fuse: 30 A }')],
    'stop fuse-not-made main-fuse',
  ],
  [
    'a feed too thin for its warm zone',
    [
      inJob('to: amp.B+ }', 'to: amp.B+, size: 8 AWG }'),
      // So short that its drop keeps the limit.
      inVehicle('{ zone: sill, length: 3 m }]\n    reaches', '{ zone: sill, length: 1 m }]\n    reaches'),
    ],
    'caution fuse-over-warm-conductor main-fuse',
  ],
  ['a black feed', [inJob('to: amp.B+ }', 'to: amp.B+, wire: black-4 }')], 'caution colour-misleads feed'],
  [
    'a red ground',
    [inJob('length: 12 in }', 'length: 12 in, wire: red-4 }')],
    'caution colour-misleads ground',
  ],
  ['a long ground', [inJob('length: 12 in', 'length: 120 in')], 'caution ground-lead-long ground'],
  ['a fuse far from the battery', [inJob('length: 6 in', 'length: 6 ft')], 'stop fuse-distance main-fuse'],
  ['a coil below the load', [inParts('nominal: 4 ohm', 'nominal: 1 ohm')], 'stop load-below-minimum amp.1'],
  [
    'a speaker back over the body',
    [
      inJob(
        speaker,
        'plus: { from: amp.CH1+, to: sub.C1+, length: 3 ft }\n  minus: { from: body.cargo, to: sub.C1-, length: 3 ft }',
      ),
    ],
    'stop coil-to-body amp.1',
  ],
  [
    'a speaker the wrong way round',
    [
      inJob(
        speaker,
        'plus: { from: amp.CH1+, to: sub.C1-, length: 3 ft }\n  minus: { from: amp.CH1-, to: sub.C1+, length: 3 ft }',
      ),
    ],
    'caution polarity-reversed sub',
  ],
  ['gain up', [inJob('GAIN: fully down', 'GAIN: half')], 'stop control-unsafe amp.GAIN'],
  ['the source on a speaker output', [inJob('to: amp.IN1', 'to: amp.CH1+')], 'stop outputs-joined signal'],
  [
    'a turn-on whose limit nobody wrote',
    [inParts('REM: { role: turn-on-out, current: 300 mA }', 'REM: { role: turn-on-out }')],
    'stop turn-on-limit-unknown radio.REM',
  ],
  [
    'a ground under a seat belt',
    [inVehicle('cargo: { zone: cargo, stud: M8 }', 'cargo: { zone: cargo, stud: M8, holds: seat-belt }')],
    'stop ground-on-restraint-fastener ground',
  ],
  [
    'a reel that is not there, in a shop that wrote the limit that asks for it',
    [inShop('  red-4: { reels: [30 ft] }\n', ''), inShop('stock:\n', 'rules: { drop-limit: 3 % }\nstock:\n')],
    'caution stock-short red-4',
  ],
  [
    'a label that is a terminal',
    [inJob('to: amp.B+ }', 'to: amp.B+, label: CH1- }')],
    'caution label-is-terminal feed',
  ],
  [
    'one label twice',
    [inJob('to: amp.B+ }', 'to: amp.B+, label: X1 }'), inJob('length: 6 in }', 'length: 6 in, label: X1 }')],
    'stop label-twice tail',
  ],
  [
    'an unmarked reel in the engine bay',
    [inParts('size: 4 AWG, insulation: 105 C, colour: RD', 'size: 4 AWG, colour: RD')],
    'stop insulation-at-ambient tail',
  ],
];

describe('one fault gives one finding, and what only follows stands under it', () => {
  test.each(faults)('%s', (_, changes, finding) => {
    // What a conductor has grown by for its drop is told whatever else is wrong.
    const top = added(...changes).top.filter((one) => one !== 'note grown-for-drop feed');
    expect(top).toEqual([finding]);
  });

  test('no finding stands twice, and nothing stands under a milder one', () => {
    for (const [, changes] of faults) {
      const { every } = added(...changes);
      const keys = every.map((one) => JSON.stringify([one.rule, one.where, one.related, one.message]));
      expect(new Set(keys).size).toBe(keys.length);
      const order = ['stop', 'caution', 'note'];
      for (const { level, follows = [] } of every)
        for (const one of follows)
          expect(order.indexOf(one.level)).toBeGreaterThanOrEqual(order.indexOf(level));
    }
  });
});

describe('two faults stay two findings', () => {
  test.each<Fault>([
    [
      'a forgotten ground beside a forgotten signal',
      [
        inJob('  ground: { from: amp.GND, to: body.cargo, length: 12 in }\n', ''),
        inJob('  signal: { from: radio.OUT1, to: amp.IN1, cable: lead, conductors: [left] }\n', ''),
      ],
      'stop device-without-ground amp, stop terminal-unaccounted amp.IN1',
    ],
    [
      'a fuse too large beside a red ground',
      [
        inJob('in: bay }', 'in: bay, fuse: 300 A }'),
        inJob('length: 12 in }', 'length: 12 in, wire: red-4 }'),
      ],
      'stop fuse-over-ceiling main-fuse, caution colour-misleads ground',
    ],
    [
      'two devices without a supply: each is told',
      [
        inJob('  sub: {', doubled),
        inJob('  feed: { from: main-fuse.OUT, to: amp.B+ }\n', ''),
        noFeedRun,
        inJob(
          'left-open:\n',
          'left-open:\n  extra.REM: x\n  extra.IN1: x\n  extra.CH1+: x\n  extra.CH1-: x\n',
        ),
        inJob('links:\n', 'links:\n  extra-ground: { from: extra.GND, to: body.cargo, length: 12 in }\n'),
      ],
      'stop device-without-supply amp, stop device-without-supply extra, stop turn-on-missing extra.REM',
    ],
  ])('%s', (_, changes, expected) => {
    const { top } = added(...changes);
    for (const finding of expected.split(', ')) expect(top).toContain(finding);
  });
});
