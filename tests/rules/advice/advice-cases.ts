import type { FindingId } from '../../../lib/model/findings/index.ts';
import { addParts, inParts, inShop, inVehicle } from '../../plan/shop-changes.ts';
import { inJob, withBoard } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';

/** A fault in the small shop whose finding says what to write. */
export interface AdviceCase {
  readonly name: string;
  readonly changes: readonly Change[];
  readonly rule: FindingId;
  readonly subject: string;
  /** Ways out that it tells. */
  readonly ways: number;
  /** What it tells to write in the first of them. */
  readonly says: RegExp;
}

const onBoard = inJob('title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main');
/** The power terminals of the amplifier stand on its right, so that its wires have ways on the board. */
const panels = [
  inParts(
    'B+: { role: supply-positive, joint: set-screw',
    'B+: { role: supply-positive, panel: right, at: 20 mm, joint: set-screw',
  ),
  inParts(
    'GND: { role: supply-negative, joint: set-screw',
    'GND: { role: supply-negative, panel: right, at: 60 mm, joint: set-screw',
  ),
];
const warmAmplifier = inParts(
  '    supply: { type: regulated, fuse: 60 A',
  '    most-ambient: 55 C\n    supply: { type: regulated, fuse: 60 A',
);
const grommets = addParts(
  'grommet-a: { kind: grommet, title: Grommet, hole: 20 mm, bore: 11 mm, panel: 1.5 mm }',
  'grommet-b: { kind: grommet, title: Grommet, hole: 28 mm, bore: 20 mm, panel: 1.5 mm }',
);
const sill = (more: string): Change =>
  inVehicle('{ zone: sill, length: 3 m }]\n    reaches', `{ zone: sill, length: 3 m${more} }]\n    reaches`);

/** A block with a way for mini blades, whose other way feeds the amplifier; a device whose maker allows 1 A at the former. */
const smallWay = (fuses = ''): readonly Change[] => [
  addParts(
    'block-b: { kind: distribution, title: Block, size: { width: 80 mm, depth: 60 mm, height: 40 mm }, mass: 300 g, current: 150 A, fused-ways: { OUT1: { from: IN, fuse-form: large-bolt-in }, TAP: { from: IN, fuse-form: mini-blade } }, terminals: { IN: { role: feed-in, joint: stud, stud: M8, takes: 8 AWG to 1/0 AWG }, OUT1: { role: feed-out, joint: stud, stud: M8, takes: 8 AWG to 1/0 AWG }, TAP: { role: feed-out, joint: screw-clamp, takes: 18 AWG to 12 AWG } } }',
    'holder-b: { kind: fuse-holder, title: Blade holder, size: { width: 40 mm, depth: 20 mm, height: 20 mm }, mass: 30 g, fuse-form: standard-blade, current: 20 A, terminals: { IN: { role: feed-in, joint: screw-clamp, takes: 18 AWG to 12 AWG }, OUT: { role: feed-out, joint: screw-clamp, takes: 18 AWG to 12 AWG } } }',
    'sender-a: { kind: processor, title: Sender, size: { width: 80 mm, depth: 60 mm, height: 30 mm }, mass: 200 g, supply: { type: regulated, fuse: 1 A, draw: 200 mA }, terminals: { B+: { role: supply-positive, joint: screw-clamp, takes: 18 AWG to 12 AWG }, GND: { role: supply-negative, joint: screw-clamp, takes: 18 AWG to 12 AWG } } }',
    'red-18: { kind: wire, title: "18 AWG red", size: 18 AWG, insulation: 105 C, colour: RD, for: [power] }',
    'black-18: { kind: wire, title: "18 AWG black", size: 18 AWG, insulation: 105 C, colour: BK, for: [ground] }',
    'blade-1: { kind: fuse, title: "1 A", form: standard-blade, rating: 1 A }',
    'mini-2: { kind: fuse, title: "2 A", form: mini-blade, rating: 2 A }',
  ),
  inShop(
    '  red-8:',
    '  red-18: { reels: [30 ft] }\n  black-18: { reels: [30 ft] }\n  holder-b: { pieces: 1 }\n  blade-1: { pieces: 2 }\n  mini-2: { pieces: 2 }\n  red-8:',
  ),
  inJob(
    '  sub: { part: woofer-a',
    `  block: { part: block-b, in: boot${fuses} }\n  sender: { part: sender-a, in: boot }\n  sub: { part: woofer-a`,
  ),
  inJob(
    'feed: { from: main-fuse.OUT, to: amp.B+ }',
    'feed: { from: main-fuse.OUT, to: block.IN }\n  amp-feed: { from: block.OUT1, to: amp.B+, length: 1 ft }\n  sender-feed: { from: block.TAP, to: sender.B+, length: 1 ft }\n  sender-ground: { from: sender.GND, to: body.cargo, length: 1 ft }',
  ),
];

export const adviceCases: readonly AdviceCase[] = [
  {
    name: 'air behind trim that is too warm: openings',
    changes: [withBoard(), onBoard, warmAmplifier],
    rule: 'air-too-warm',
    subject: 'amp',
    ways: 1,
    says: /^openings: /,
  },
  {
    name: 'the same where the space has openings already',
    changes: [
      withBoard(),
      onBoard,
      warmAmplifier,
      inVehicle('    air: 60 L\n', '    openings: [{ width: 100 mm, height: 20 mm }]\n    air: 60 L\n'),
    ],
    rule: 'air-too-warm',
    subject: 'amp',
    ways: 1,
    says: /^openings: /,
  },
  {
    name: 'a hole with a sharp edge that no grommet fits: one that takes the wire in its loom',
    changes: [grommets, sill(', edge: true, through-hole: 19 mm')],
    rule: 'edge-without-grommet',
    subject: 'power',
    ways: 1,
    says: /^through-hole: \d+ mm$/,
  },
  {
    name: "the vehicle's own grommet that is too small",
    changes: [grommets, sill(', own-grommet: true, through-hole: 8 mm')],
    rule: 'edge-without-grommet',
    subject: 'power',
    ways: 1,
    says: /^through-hole: \d+ mm, own-grommet: false$/,
  },
  {
    name: 'a hole without an edge that the loom does not go through',
    changes: [sill(', through-hole: 7 mm')],
    rule: 'bundle-over-hole',
    subject: 'power',
    ways: 1,
    says: /^through-hole: \d+\/\d+ in$/,
  },
  {
    name: 'coils that are proposed in series, where the other joining gives more than the speaker takes',
    changes: [
      inParts(
        'coils: { C1: { positive: C1+, negative: C1-, nominal: 4 ohm } }\n    terminals: { C1+: { role: coil-positive }, C1-: { role: coil-negative } }',
        'coils: { C1..2: { nominal: 4 ohm } }\n    terminals: { C1..2: { role: coil, conductors: 2 } }',
      ),
      inParts(
        'powers: [{ load: 4 ohm, power: 300 W }]',
        'powers: [{ load: 4 ohm, power: 300 W }, { load: 2 ohm, power: 500 W }]',
      ),
      inJob('  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }\n', ''),
      inJob('sub: { part: woofer-a, in: boot }', 'sub: { part: woofer-a, in: boot, driven-by: amp }'),
    ],
    rule: 'coils-joined-otherwise',
    subject: 'amp.1',
    ways: 1,
    says: /^1: 2 ohm$/,
  },
  {
    name: 'a route along the left that reaches a wall seen to the rear at its left edge: the right one',
    changes: [withBoard(), onBoard, ...panels, inVehicle('    right: rear\n', '    right: left\n')],
    rule: 'edge-on-other-side',
    subject: 'well',
    ways: 2,
    says: /^edge: right$/,
  },
  {
    name: 'a fuse above what the maker of the amplifier allows',
    changes: [
      inJob('main-fuse: { part: holder-a, in: bay }', 'main-fuse: { part: holder-a, in: bay, fuse: 80 A }'),
    ],
    rule: 'fuse-over-ceiling',
    subject: 'main-fuse',
    ways: 1,
    says: /^fuse: 60 A$/,
  },
  {
    name: 'a fuse of a way above what the maker of a device allows, in a form that is not made as small',
    changes: smallWay(', fuses: { TAP: 5 A }'),
    rule: 'fuse-over-ceiling',
    subject: 'block.TAP',
    ways: 1,
    says: /^fuse-sender: \{ part: holder-b, in: boot, fuse: 1 A \}, /,
  },
  {
    name: 'a way whose form is not made as small as the maker of a device allows',
    changes: smallWay(),
    rule: 'fuse-without-rating',
    subject: 'block.TAP',
    ways: 1,
    says: /^fuse-sender: \{ part: holder-b, in: boot, fuse: 1 A \}, /,
  },
  {
    name: 'an input that takes less than the vehicle gives',
    changes: [
      inParts(
        'IN1: { role: signal-in, joint: phono, signal: 4 V }',
        'IN1: { role: signal-in, joint: phono, signal-range: 0.2 V to 3 V }',
      ),
    ],
    rule: 'input-overdriven',
    subject: 'amp.IN1',
    ways: 1,
    says: /^clean-voltage: 3 V$/,
  },
  {
    name: 'a wire that is written shorter than its run',
    changes: [
      inJob(
        'feed: { from: main-fuse.OUT, to: amp.B+ }',
        'feed: { from: main-fuse.OUT, to: amp.B+, length: 3.4996 m }',
      ),
    ],
    rule: 'length-under-run',
    subject: 'feed',
    ways: 1,
    says: /^length: 137 13\/16 in$/,
  },
  {
    name: 'a wire that is written as long as its run alone, and goes on over the board',
    changes: [
      withBoard(),
      onBoard,
      ...panels,
      inJob(
        'feed: { from: main-fuse.OUT, to: amp.B+ }',
        'feed: { from: main-fuse.OUT, to: amp.B+, length: 3.5 m }',
      ),
    ],
    rule: 'length-under-run',
    subject: 'feed',
    ways: 1,
    says: /^length: \d/,
  },
  {
    name: 'a wire that is shorter than its way on the board',
    changes: [withBoard(), onBoard, ...panels, inJob('length: 12 in }', 'length: 20 mm }')],
    rule: 'length-short-of-way',
    subject: 'ground',
    ways: 1,
    says: /^length: /,
  },
  {
    name: 'a terminal that faces the edge of the board too near for its wire to turn',
    changes: [
      withBoard(),
      inJob(
        'title: Bass amplifier\n    in: boot',
        'title: Bass amplifier\n    on: main\n    at: { x: 397 mm, y: 100 mm }\n    turn: 0',
      ),
      ...panels,
    ],
    rule: 'wire-without-way',
    subject: 'feed',
    ways: 1,
    says: /^width: \d/,
  },
  {
    name: 'two ways of an amplifier that cancel, and a switch for the phase of the lower one',
    changes: [
      inParts('filter-orders: [4]', 'filter-orders: [2]'),
      inParts(
        'powers: [{ load: 4 ohm, power: 300 W }] }\n',
        "powers: [{ load: 4 ohm, power: 300 W }] }\n      '2': { positive: CH2+, negative: CH2-, input: IN2, minimum: 2 ohm, powers: [{ load: 4 ohm, power: 50 W }] }\n",
      ),
      inParts(
        'IN1: { role: signal-in, joint: phono, signal: 4 V }\n',
        'IN1: { role: signal-in, joint: phono, signal: 4 V }\n      IN2: { role: signal-in, joint: phono, signal: 4 V }\n      CH2+: { role: speaker-out-positive }\n      CH2-: { role: speaker-out-negative }\n',
      ),
      inParts('GAIN: {', "PHASE: { what: phase, panel: left, channels: ['1'] }\n      GAIN: {"),
      addParts(
        'midrange-a: { kind: speaker, title: Midrange, size: { width: 100 mm, depth: 80 mm, height: 40 mm }, mass: 1 kg, band: midrange, power: 50 W, lowest-frequency: 80 Hz, coils: { C1: { positive: C1+, negative: C1-, nominal: 4 ohm } }, terminals: { C1+: { role: coil-positive }, C1-: { role: coil-negative } } }',
      ),
      inJob(
        'order: 4, corner: 80 Hz }]',
        'order: 2, corner: 80 Hz }]\n      CH2: [{ pass: high-pass, type: butterworth, order: 2, corner: 80 Hz }]',
      ),
      inJob('  sub: {', '  mid: { part: midrange-a, in: boot }\n  sub: {'),
      inJob(
        '  speaker: {',
        '  signal-2: { from: radio.OUT2, to: amp.IN2, cable: lead, conductors: [right] }\n  mid-lead: { from: amp.CH2, to: mid.C1, length: 3 ft }\n  speaker: {',
      ),
      inJob('left-open:\n  radio.OUT2: one channel is used\n', ''),
    ],
    rule: 'crossover-cancels',
    subject: 'amp.2',
    ways: 1,
    says: /^PHASE: "180"$/,
  },
];
