import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { partsFileSchema } from '../../../lib/model/content/catalogue.ts';
import { vehicleSchema } from '../../../lib/model/content/vehicle.ts';
import type { Part } from '../../../lib/model/kinds/index.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { demoContent } from '../../plan/demo.ts';

const shop = { path: 'content/shop.yaml', text: 'rackleaf: 1\nname: Test\n' };

/** The parts of a file, which has to be read without a problem. */
function partsIn(text: string): Readonly<Record<string, Part>> {
  const { parts, problems } = readContent([shop, { path: 'content/parts/parts.yaml', text }]);
  expect(problems.map(({ message }) => message)).toEqual([]);
  return parts;
}

/** A part with some lines of its own. */
const part = (lines: string) => `rackleaf: 1
parts:
  one:
    title: Part
    size: { width: 10 in, depth: 6 1/2 in, height: 2 in }
    mass: 3 kg
${lines.replace(/^/gm, '    ')}
`;

const amplifier = (lines: string) =>
  part(`kind: amplifier
supply: { type: regulated, fuse: 30 A }
${lines}`);
const terminals = `terminals:
  B+: { role: supply-positive }
  GND: { role: supply-negative }
  CH1+: { role: speaker-out-positive }
  CH1-: { role: speaker-out-negative }
  CH2+: { role: speaker-out-positive }
  CH2-: { role: speaker-out-negative }
  IN1: { role: signal-in }
  IN2: { role: signal-in }
`;
const channels = `channels:
  '1': { positive: CH1+, negative: CH1-, input: IN1, minimum: 2 ohm, powers: [{ load: 4 ohm, power: 75 W }, { load: 2 ohm, power: 100 W }] }
  '2': { positive: CH2+, negative: CH2-, input: IN2, minimum: 2 ohm, powers: [{ load: 4 ohm, power: 75 W }, { load: 2 ohm, power: 100 W }] }
`;

/** What is told, as it is written short and as it is written long. */
type Spelled = readonly [what: string, short: string, long: string];

const controls: readonly Spelled[] = [
  [
    'a gain',
    'G: { what: gain, panel: left }',
    'G: { what: gain, form: knob, panel: left, safe: fully counter-clockwise, why: no signal passes until the gain is set with a meter }',
  ],
  [
    'a gain in a menu',
    'G: { what: gain, form: menu, panel: face }',
    'G: { what: gain, form: menu, panel: face, safe: lowest, why: no signal passes until the gain is set with a meter }',
  ],
  [
    'a boost',
    'B: { what: boost, panel: left, boost: { centre: 45 Hz, range: 0 dB to 12 dB } }',
    'B: { what: boost, form: knob, panel: left, boost: { centre: 45 Hz, range: { from: 0 dB, to: 12 dB } }, safe: fully counter-clockwise, why: boost adds to the gain and is the first thing to overdrive a woofer }',
  ],
  [
    'a switch of a crossover',
    'X: { what: crossover-mode, panel: left, positions: [FULL, HPF, LPF], filter: { type: butterworth, order: 2, passes: { HPF: high-pass, LPF: low-pass } } }',
    'X: { what: crossover-mode, form: switch, panel: left, positions: [FULL, HPF, LPF], filter: { type: butterworth, order: 2, passes: { HPF: high-pass, LPF: low-pass } }, safe: HPF, why: a high-pass holds bass from small cones until the filters before it are proved }',
  ],
  [
    'a switch whose safe position is no high-pass',
    'X: { what: crossover-mode, panel: left, safe: FULL, positions: [FULL, HPF], filter: { type: butterworth, order: 2, passes: { HPF: high-pass } } }',
    'X: { what: crossover-mode, form: switch, panel: left, positions: [FULL, HPF], filter: { type: butterworth, order: 2, passes: { HPF: high-pass } }, safe: FULL, why: the position that its part names for first power-up }',
  ],
  [
    'a low-pass',
    'L: { what: crossover, panel: left, safe: 80 Hz, filter: { pass: low-pass, range: 40 Hz to 250 Hz } }',
    'L: { what: crossover, form: knob, panel: left, safe: 80 Hz, why: above the highest note a bass channel should play, filter: { pass: low-pass, range: { from: 40 Hz, to: 250 Hz } } }',
  ],
  [
    'the corner of a switch',
    'F: { what: crossover, panel: left, safe: 80 Hz, filter: { range: 50 Hz to 500 Hz } }',
    'F: { what: crossover, form: knob, panel: left, safe: 80 Hz, why: a first high-pass for a door speaker, filter: { range: { from: 50 Hz, to: 500 Hz } } }',
  ],
  [
    'a subsonic filter',
    'S: { what: subsonic, panel: left, safe: 25 Hz }',
    'S: { what: subsonic, form: knob, panel: left, safe: 25 Hz, why: cone travel below the enclosure is wasted }',
  ],
  [
    'the level of two channels',
    'L: { what: level, panel: face, channels: [1, 2] }',
    "L: { what: level, form: menu, panel: face, channels: ['1', '2'], safe: 0 dB, why: gains are set with every output alike }",
  ],
  [
    'a phase switch',
    'P: { what: phase, panel: left }',
    "P: { what: phase, form: switch, panel: left, positions: ['0', '180'], safe: '0', why: polarity is checked before it is changed }",
  ],
  [
    'a turn-on switch',
    'T: { what: turn-on-mode, panel: left, positions: [AUTO, REM], automatic: [AUTO] }',
    'T: { what: turn-on-mode, form: switch, panel: left, positions: [AUTO, REM], automatic: [AUTO], safe: REM, why: a wired turn-on comes up every time }',
  ],
  [
    'what its file says, it says',
    'G: { what: gain, form: slide, panel: left, safe: middle, why: as its maker asks }',
    'G: { what: gain, form: slide, panel: left, safe: middle, why: as its maker asks }',
  ],
  [
    'a row of gains',
    'G1..2: { what: gain, panel: left, at: 1 in, pitch: 1/2 in, channels: [[1], 2] }',
    `G1: { what: gain, form: knob, panel: left, at: 1 in, channels: ['1'], safe: fully counter-clockwise, why: no signal passes until the gain is set with a meter }
  G2: { what: gain, form: knob, panel: left, at: 1 1/2 in, channels: ['2'], safe: fully counter-clockwise, why: no signal passes until the gain is set with a meter }`,
  ],
  [
    'a range of channels',
    'G: { what: gain, panel: left, channels: 1..2, why: because }',
    "G: { what: gain, form: knob, panel: left, channels: ['1', '2'], safe: fully counter-clockwise, why: because }",
  ],
];

describe('a control written short is the one written long', () => {
  test.each(controls)('%s', (_, short, long) => {
    const withControl = (line: string) => amplifier(`${terminals}${channels}controls:\n  ${line}`);
    expect(partsIn(withControl(short))).toEqual(partsIn(withControl(long)));
  });
});

const spelled: readonly Spelled[] = [
  [
    'terminals of an amplifier',
    amplifier(`${channels}terminals:
  B+, GND: { role: supply, panel: right, at: 5/8 in, pitch: 3/4 in, joint: set-screw, takes: 8 AWG to 4 AWG }
  CH1..2: { role: speaker-out, panel: right, at: 2 3/4 in, pitch: 7/16 in }
  IN1..2: { role: signal-in, panel: left, at: 12 mm, pitch: 12.5 mm, signal-range: 0.25 V to 6 V }`),
    amplifier(`${channels}terminals:
  B+: { role: supply-positive, panel: right, at: 5/8 in, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
  GND: { role: supply-negative, panel: right, at: 1 3/8 in, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
  CH1+: { role: speaker-out-positive, panel: right, at: 2 3/4 in }
  CH1-: { role: speaker-out-negative, panel: right, at: 3 3/16 in }
  CH2+: { role: speaker-out-positive, panel: right, at: 3 5/8 in }
  CH2-: { role: speaker-out-negative, panel: right, at: 4 1/16 in }
  IN1: { role: signal-in, panel: left, at: 12 mm, signal-range: { from: 0.25 V, to: 6 V } }
  IN2: { role: signal-in, panel: left, at: 24.5 mm, signal-range: { from: 0.25 V, to: 6 V } }`),
  ],
  [
    'channels and bridges',
    amplifier(`${terminals}channels: { 1..2: { output: CH1..2, input: IN1..2, minimum: 2 ohm, powers: { 4 ohm: 75 W, 2 ohm: 100 W } } }
bridges: { 1+2: { positive: CH1+, negative: CH2-, input: IN1, minimum: 4 ohm, powers: { 4 ohm: 200 W } } }`),
    amplifier(`${terminals}${channels}bridges:
  '1+2': { positive: CH1+, negative: CH2-, input: IN1, minimum: 4 ohm, powers: [{ load: 4 ohm, power: 200 W }] }`),
  ],
  [
    'holes in four corners',
    amplifier(`${terminals}${channels}mounting-holes: { inset: 3/8 in, diameter: 3/16 in }`),
    amplifier(`${terminals}${channels}mounting-holes:
  - { x: 3/8 in, y: 3/8 in, diameter: 3/16 in }
  - { x: 3/8 in, y: 6 1/8 in, diameter: 3/16 in }
  - { x: 9 5/8 in, y: 3/8 in, diameter: 3/16 in }
  - { x: 9 5/8 in, y: 6 1/8 in, diameter: 3/16 in }`),
  ],
  [
    'coils of a speaker',
    part(`kind: speaker
band: subwoofer
power: 500 W
terminals: { C1..2: { role: coil, joint: binding-post } }
coils: { C1..2: { nominal: 4 ohm } }
boxes: { sealed: 25 L to 40 L }`),
    part(`kind: speaker
band: subwoofer
power: 500 W
terminals:
  C1+: { role: coil-positive, joint: binding-post }
  C1-: { role: coil-negative, joint: binding-post }
  C2+: { role: coil-positive, joint: binding-post }
  C2-: { role: coil-negative, joint: binding-post }
coils:
  C1: { positive: C1+, negative: C1-, nominal: 4 ohm }
  C2: { positive: C2+, negative: C2-, nominal: 4 ohm }
boxes: { sealed: { from: 25 L, to: 40 L } }`),
  ],
  [
    'ways of a fuse block',
    part(`kind: distribution
current: 60 A
terminals: { IN: { role: feed-in }, OUT1..3: { role: feed-out } }
fused-ways: { OUT1..3: { from: IN, fuse-form: mini-blade } }`),
    part(`kind: distribution
current: 60 A
terminals: { IN: { role: feed-in }, OUT1: { role: feed-out }, OUT2: { role: feed-out }, OUT3: { role: feed-out } }
fused-ways:
  OUT1: { from: IN, fuse-form: mini-blade }
  OUT2: { from: IN, fuse-form: mini-blade }
  OUT3: { from: IN, fuse-form: mini-blade }`),
  ],
];

test.each(spelled)('%s written short are those written long', (_, short, long) => {
  expect(partsIn(short)).toEqual(partsIn(long));
});

const vehicle = (lines: string) => `rackleaf: 1
id: car
title: Car
fitted: {}
grounds: {}
routes: {}
${lines}
`;

/** A vehicle, which has to be read without a problem. */
function vehicleIn(lines: string) {
  const { vehicles, problems } = readContent([
    shop,
    { path: 'content/vehicles/car.yaml', text: vehicle(lines) },
  ]);
  expect(problems.map(({ message }) => message)).toEqual([]);
  return vehicles;
}

test('a vehicle written short is the one written long', () => {
  const short = vehicleIn(`spaces:
  side-well: { zone: cargo, side: left, outline: { width: 20 in, height: 15 in }, depth: 6 in, right: front, upward: up,
    sound-points: { low-1..2: { x: [2 in, 18 in], y: 2 in, stud: M6, what: nut, behind: nothing } } }
places:
  left-door, right-door: { zone: cabin, side: [left, right], depth: 3 in, distance: [41 in, 55 in] }
`);
  const long = vehicleIn(`spaces:
  side-well:
    title: Side well
    zone: cargo
    side: left
    outline: [[0 in, 0 in], [20 in, 0 in], [20 in, 15 in], [0 in, 15 in]]
    depth: 6 in
    right: front
    upward: up
    sound-points:
      low-1: { x: 2 in, y: 2 in, stud: M6, what: nut, behind: nothing }
      low-2: { x: 18 in, y: 2 in, stud: M6, what: nut, behind: nothing }
places:
  left-door: { title: Left door, zone: cabin, side: left, depth: 3 in, distance: 41 in }
  right-door: { title: Right door, zone: cabin, side: right, depth: 3 in, distance: 55 in }
`);
  expect(short).toEqual(long);
});

test.each(['20 in x 15 in', '20 x 15 in', '508 mm x 381 mm', '20 1/2 x 15 3/8 in', '20" x 15"'])(
  'the outline of a space is a rectangle of two numbers: %s',
  (written) => {
    const spaceOf = (outline: string) =>
      vehicleIn(`spaces:
  well: { zone: cargo, side: left, outline: ${outline}, depth: 6 in, right: front, upward: up, sound-points: {} }
`).car?.spaces.well?.outline;
    // 1 in is 25.4 mm.
    const [width, height] = /1\/2/.test(written) ? [0.5207, 0.390525] : [0.508, 0.381];
    const corners = spaceOf(`'${written}'`);
    expect(corners).toHaveLength(4);
    expect(corners?.[2]?.[0]).toBeCloseTo(width, 9);
    expect(corners?.[2]?.[1]).toBeCloseTo(height, 9);
    expect(corners?.[0]).toEqual([0, 0]);
  },
);

test('a route and the outputs of a source written short are those written long', () => {
  const around = (passes: string, outputs: string) => `rackleaf: 1
id: car
title: Car
fitted: { radio: { part: radio, zone: cabin, outputs: { ${outputs} } } }
grounds: {}
spaces: {}
routes: { tail: { title: Tail, side: left, passes: [${passes}] } }
`;
  const read = (text: string) =>
    readContent([
      shop,
      { path: 'content/vehicles/car.yaml', text },
      {
        path: 'content/parts/radio.yaml',
        text: part(
          'kind: source-unit\nsupply: { type: constant-current, fuse: 10 A }\nterminals:\n  B+, GND: { role: supply }\n  OUT1..2: { role: signal-out }',
        ).replace('one:', 'radio:'),
      },
    ]);
  const short = read(
    around(
      'sill 6 ft, { zone: bulkhead, length: 6 in, edge: true }, cargo 24 in',
      'OUT1..2: { side: [left, right], bandwidth: 30 Hz to 18 kHz, chimes: false }',
    ),
  );
  const long = read(
    around(
      '{ zone: sill, length: 6 ft }, { zone: bulkhead, length: 6 in, edge: true }, { zone: cargo, length: 24 in }',
      'OUT1: { side: left, bandwidth: { from: 30 Hz, to: 18 kHz }, chimes: false }, OUT2: { side: right, bandwidth: { from: 30 Hz, to: 18 kHz }, chimes: false }',
    ),
  );
  expect(short.problems).toEqual([]);
  expect(short.vehicles).toEqual(long.vehicles);
});

describe('the form of a fuse', () => {
  const fuse = (form: string) =>
    part(`kind: fuse\nform: ${form}\nrating: 60 A`).replace(/ {4}(?:size|mass): .*\n/g, '');
  // Words of the trade by the bodies that they are sold as: common practice, no source.
  test.each([
    ['ATC', 'standard-blade'],
    ['maxi', 'maxi-blade'],
    ['midi', 'bolt-in-30mm'],
    ['mini-ANL', 'small-bolt-in'],
    ['ANL', 'large-bolt-in'],
    ['mega', 'bolt-in-51mm'],
  ])('may be told as %s, and is held as %s', (word, form) => {
    expect(partsIn(fuse(word))).toEqual(partsIn(fuse(form)));
    expect(partsIn(fuse(word)).one).toMatchObject({ form });
  });
});

describe('the demo written out in full', () => {
  const { parts, vehicles } = demoContent();
  test('has the parts that it has in short', () => {
    const data = z.encode(partsFileSchema, { rackleaf: 1, parts });
    expect(partsIn(JSON.stringify(data))).toEqual(parts);
  });
  test.each(Object.entries(vehicles))('has the vehicle %s that it has in short', (id, own) => {
    const data = z.encode(vehicleSchema, own);
    const files = [
      shop,
      { path: `content/vehicles/${id}.yaml`, text: JSON.stringify(data) },
      {
        path: 'content/parts/all.yaml',
        text: JSON.stringify(z.encode(partsFileSchema, { rackleaf: 1, parts })),
      },
    ];
    const read = readContent(files);
    expect(read.problems).toEqual([]);
    expect(read.vehicles[id]).toEqual(own);
  });
});
