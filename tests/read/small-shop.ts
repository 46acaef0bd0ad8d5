import type { SourceFile } from '../../lib/model/content/source-file.ts';

const shop = `rackleaf: 1
name: Test bench
# House rules keep their defaults.
stock:
  red-4: { reels: [30 ft] }
  black-4: { reels: [30 ft] }
  red-8: { reels: [30 ft] }
  black-8: { reels: [30 ft] }
  blue-18: { reels: [30 ft] }
  white-12: { reels: [30 ft] }
  striped-12: { reels: [30 ft] }
  large-60: { pieces: 2 }
  large-80: { pieces: 2 }
`;

const equipment = 'size: { width: 100 mm, depth: 80 mm, height: 40 mm }\n    mass: 1 kg';
const parts = `rackleaf: 1
parts:
  battery-a:
    kind: battery
    title: Battery
    ${equipment}
    chemistry: absorbed-glass-mat
    capacity: 70 Ah
    cold-cranking: 600 A
    terminals:
      POS: { role: source-positive, joint: stud, stud: M8, conductors: 4 }
      NEG: { role: source-negative, joint: stud, stud: M8, conductors: 4 }
  generator-a:
    kind: alternator
    title: Alternator
    ${equipment}
    rating: 150 A
    terminals:
      B+: { role: source-positive, joint: stud, stud: M8 }
      CASE: { role: source-negative, joint: stud, stud: M8 }
  holder-a:
    kind: fuse-holder
    title: Holder
    ${equipment}
    fuse-form: large-bolt-in
    current: 200 A
    terminals:
      IN: { role: feed-in, joint: stud, stud: M8, takes: { from: 8 AWG, to: 1/0 AWG } }
      OUT: { role: feed-out, joint: stud, stud: M8, takes: { from: 8 AWG, to: 1/0 AWG } }
  block-a:
    kind: distribution
    title: Fused block
    ${equipment}
    current: 150 A
    fused-ways:
      OUT1: { from: IN, fuse-form: maxi-blade }
    terminals:
      IN: { role: feed-in, joint: set-screw, takes: { from: 8 AWG, to: 1/0 AWG } }
      OUT1: { role: feed-out, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
  amp-a:
    kind: amplifier
    title: Amplifier
    ${equipment}
    supply: { type: regulated, fuse: 60 A, amplifier-class: class-d, turn-on-draw: 20 mA }
    filter-orders: [4]
    channels:
      '1': { positive: CH1+, negative: CH1-, input: IN1, minimum: 2 ohm, powers: [{ load: 4 ohm, power: 300 W }] }
    terminals:
      B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
      GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
      REM: { role: turn-on-in }
      IN1: { role: signal-in, joint: phono, signal: 4 V }
      CH1+: { role: speaker-out-positive }
      CH1-: { role: speaker-out-negative }
    controls:
      GAIN: { what: gain, form: knob, panel: left, safe: fully down, why: no signal passes }
  radio-a:
    kind: source-unit
    title: Radio
    ${equipment}
    supply: { type: regulated, fuse: 10 A, draw: 2 A }
    terminals:
      B+: { role: supply-positive }
      GND: { role: supply-negative }
      REM: { role: turn-on-out, current: 300 mA }
      OUT1: { role: signal-out, joint: phono, signal: 4 V }
      OUT2: { role: signal-out, joint: phono, signal: 4 V }
  woofer-a:
    kind: speaker
    title: Woofer
    ${equipment}
    band: subwoofer
    power: 400 W
    coils: { C1: { positive: C1+, negative: C1-, nominal: 4 ohm } }
    terminals: { C1+: { role: coil-positive }, C1-: { role: coil-negative } }
  lead-a:
    kind: cable
    title: Phono lead, 10 ft
    form: coaxial
    made-length: 10 ft
    for: [signal]
    conductors: { left: { size: 24 AWG, colour: RD }, right: { size: 24 AWG, colour: WH } }
  red-4: { kind: wire, title: "4 AWG red", size: 4 AWG, insulation: 105 C, colour: RD, for: [power] }
  black-4: { kind: wire, title: "4 AWG black", size: 4 AWG, insulation: 105 C, colour: BK, for: [ground] }
  red-8: { kind: wire, title: "8 AWG red", size: 8 AWG, insulation: 105 C, colour: RD, for: [power] }
  black-8: { kind: wire, title: "8 AWG black", size: 8 AWG, insulation: 105 C, colour: BK, for: [ground] }
  blue-18: { kind: wire, title: "18 AWG blue", size: 18 AWG, insulation: 105 C, colour: BU, for: [turn-on] }
  white-12: { kind: wire, title: "12 AWG white", size: 12 AWG, insulation: 80 C, colour: WH, for: [speaker] }
  striped-12: { kind: wire, title: "12 AWG white, black stripe", size: 12 AWG, insulation: 80 C, colour: WH/BK, for: [speaker] }
  large-60: { kind: fuse, title: "60 A", form: large-bolt-in, rating: 60 A }
  large-80: { kind: fuse, title: "80 A", form: large-bolt-in, rating: 80 A }
  loom-a: { kind: covering, title: Loom, form: loom, bore: 13 mm, withstands: 125 C }
  bolt-a: { kind: fixing, title: "M6 bolt", form: bolt, thread: M6, length: 30 mm, clearance: 6.4 mm, holds: 40 kg }
  ply-a:
    kind: board-sheet
    title: Plywood
    material: birch-plywood
    thickness: 18 mm
    width: 1500 mm
    height: 1500 mm
    density: 680 kg/m3
    modulus: 9 GPa
`;

const vehicle = `rackleaf: 1
id: wagon
title: Estate car
vehicle-load: 45 A
fitted:
  battery: { part: battery-a, zone: engine-bay, side: left }
  alternator: { part: generator-a, zone: engine-bay }
  radio:
    part: radio-a
    zone: cabin
    left-open: { B+: fed by the vehicle, GND: grounded by the vehicle }
grounds:
  engine: { zone: engine-bay, stud: M8 }
  cargo: { zone: cargo, stud: M8 }
links:
  charge: { from: alternator.B+, to: battery.POS, size: 4 AWG, length: 1 m }
  strap: { from: battery.NEG, to: body.engine, size: 4 AWG, length: 300 mm }
  case: { from: alternator.CASE, to: body.engine, size: 4 AWG, length: 300 mm }
spaces:
  well:
    title: Side well
    zone: cargo
    side: left
    outline: [[0 mm, 0 mm], [800 mm, 0 mm], [800 mm, 500 mm], [0 mm, 500 mm]]
    depth: 200 mm
    right: rear
    upward: up
    air: 60 L
    sound-points:
      p1: { x: 50 mm, y: 50 mm, stud: M6, what: rivet nut, behind: nothing }
      p2: { x: 450 mm, y: 50 mm, stud: M6, what: rivet nut, behind: nothing }
routes:
  left-sill:
    title: Left sill
    side: left
    passes: [{ zone: engine-bay, length: 500 mm }, { zone: sill, length: 3 m }]
    reaches: { space: well, edge: left }
  right-sill: { title: Right sill, side: right, passes: [{ zone: sill, length: 3 m }] }
places:
  bay: { title: Beside the battery, zone: engine-bay, side: left }
  boot: { title: Boot, zone: cargo, side: middle }
`;

const job = `rackleaf: 1
id: demo
title: One amplifier
revision: A
status: draft # until it is released
issued-on: 2026-03-14
vehicle: wagon
space: well
customer:
  name: Ada Specimen
  contact: 555 0199
  plate: QZX 471
devices:
  main-fuse: { part: holder-a, in: bay }
  amp:
    part: amp-a
    title: Bass amplifier
    in: boot
    settings:
      GAIN: fully down
    filters:
      CH1: [{ pass: low-pass, type: butterworth, order: 4, corner: 80 Hz }]
  sub: { part: woofer-a, in: boot }
cables:
  lead: { part: lead-a }
links:
  tail: { from: battery.POS, to: main-fuse.IN, length: 6 in }
  feed: { from: main-fuse.OUT, to: amp.B+ }
  ground: { from: amp.GND, to: body.cargo, length: 12 in }
  turn-on: { from: radio.REM, to: amp.REM }
  signal: { from: radio.OUT1, to: amp.IN1, cable: lead, conductors: [left] }
  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }
runs:
  power: { route: left-sill, links: [feed], covering: loom-a }
  control: { route: right-sill, links: [turn-on] }
left-open:
  radio.OUT2: one channel is used
notes:
  - The second output stays in its bag.
`;

const guide = `---
title: Setting gain
summary: What to read on the meter.
---
Use a meter.
`;

const texts = {
  'content/guides/gain.md': guide,
  'content/jobs/demo.yaml': job,
  'content/parts/all.yaml': parts,
  'content/shop.yaml': shop,
  'content/vehicles/wagon.yaml': vehicle,
} as const;
export type SmallFile = keyof typeof texts;

/** An exchange in one file of the small shop: the text found, and what stands there instead. */
export type Change = readonly [file: SmallFile, found: string, instead: string];

/** A small shop with one job that can be read, planned and released, with changes made to its files. */
export function smallShop(...changes: readonly Change[]): SourceFile[] {
  return Object.entries(texts).map(([path, text]) => ({
    path,
    text: changes
      .filter(([file]) => file === path)
      .reduce<string>((changed, [, found, instead]) => exchange(changed, found, instead), text),
  }));
}

function exchange(text: string, found: string, instead: string): string {
  if (text.split(found).length !== 2) throw new Error(`The small shop has not just one "${found}".`);
  return text.replace(found, () => instead);
}

/** Mark for the place that a test is about; it is taken out before the files are read. */
export const mark = '^';

/** The files without their mark, and where it stood: `file:line:column`. */
export function withoutMark(files: readonly SourceFile[]): {
  readonly files: readonly SourceFile[];
  readonly place: string;
} {
  const [marked] = files.filter(({ text }) => text.includes(mark));
  if (!marked) throw new Error('The test marks no place.');
  const before = marked.text.slice(0, marked.text.indexOf(mark)).split('\n');
  return {
    files: files.map(({ path, text }) => ({ path, text: text.replace(mark, '') })),
    place: `${marked.path}:${before.length}:${(before.at(-1) ?? '').length + 1}`,
  };
}
