import type { z } from 'zod';
import type { jobSchema } from '../../lib/model/job.ts';
import type { partSchema } from '../../lib/model/kinds/index.ts';
import type { shopSchema } from '../../lib/model/shop.ts';
import type { vehicleSchema } from '../../lib/model/vehicle.ts';

/** What a shop wrote, before it is read. */
export interface Written {
  shop: z.input<typeof shopSchema>;
  vehicle: z.input<typeof vehicleSchema>;
  parts: Record<string, z.input<typeof partSchema>>;
  job: z.input<typeof jobSchema>;
}

const size = { width: '100 mm', depth: '100 mm', height: '50 mm' };
const body = { size, mass: '1 kg' };
const screw = (from: string, to: string) => ({ joint: 'set-screw' as const, takes: { from, to } });

const parts = (): Written['parts'] => ({
  agm: {
    kind: 'battery',
    title: 'Battery',
    ...body,
    chemistry: 'absorbed-glass-mat',
    capacity: '70 Ah',
    'cold-cranking': '600 A',
    terminals: {
      POS: { role: 'source-positive', joint: 'stud', stud: 'M8' },
      NEG: { role: 'source-negative', joint: 'stud', stud: 'M8' },
    },
  },
  generator: {
    kind: 'alternator',
    title: 'Alternator',
    ...body,
    rating: '150 A',
    terminals: {
      'B+': { role: 'source-positive', joint: 'stud', stud: 'M8' },
      CASE: { role: 'source-negative', joint: 'stud', stud: 'M8' },
    },
  },
  holder: {
    kind: 'fuse-holder',
    title: 'Holder',
    ...body,
    'fuse-form': 'large-bolt-in',
    current: '250 A',
    terminals: {
      IN: { role: 'feed-in', joint: 'stud', stud: 'M8' },
      OUT: { role: 'feed-out', joint: 'stud', stud: 'M8' },
    },
  },
  fused: {
    kind: 'distribution',
    title: 'Fused distribution',
    ...body,
    current: '150 A',
    'fused-ways': {
      OUT1: { from: 'IN', 'fuse-form': 'maxi-blade' },
      OUT2: { from: 'IN', 'fuse-form': 'standard-blade' },
      OUT3: { from: 'IN', 'fuse-form': 'standard-blade' },
    },
    terminals: {
      IN: { role: 'feed-in', ...screw('8 AWG', '1/0 AWG') },
      OUT1: { role: 'feed-out', ...screw('12 AWG', '4 AWG') },
      OUT2: { role: 'feed-out', ...screw('18 AWG', '8 AWG') },
      OUT3: { role: 'feed-out', ...screw('18 AWG', '8 AWG') },
    },
  },
  bar: {
    kind: 'distribution',
    title: 'Ground distribution',
    ...body,
    current: '200 A',
    terminals: {
      G0: { role: 'ground-bar', ...screw('8 AWG', '1/0 AWG') },
      G1: { role: 'ground-bar', ...screw('12 AWG', '4 AWG') },
      G2: { role: 'ground-bar', ...screw('18 AWG', '8 AWG') },
    },
  },
  'two-channel': {
    kind: 'amplifier',
    title: 'Amplifier',
    ...body,
    heat: '90 W',
    cooling: { right: 'fan' },
    supply: { type: 'regulated', fuse: '60 A', 'turn-on-draw': '20 mA' },
    channels: {
      '1': {
        positive: 'CH1+',
        negative: 'CH1-',
        input: 'IN1',
        minimum: '2 ohm',
        powers: [{ load: '4 ohm', power: '75 W' }],
      },
      '2': {
        positive: 'CH2+',
        negative: 'CH2-',
        input: 'IN2',
        minimum: '2 ohm',
        powers: [{ load: '4 ohm', power: '75 W' }],
      },
    },
    terminals: {
      'B+': { role: 'supply-positive', ...screw('10 AWG', '4 AWG') },
      GND: { role: 'supply-negative', ...screw('10 AWG', '4 AWG') },
      REM: { role: 'turn-on-in' },
      IN1: { role: 'signal-in', joint: 'phono', signal: '2 V' },
      IN2: { role: 'signal-in', joint: 'phono', signal: '2 V' },
      'CH1+': { role: 'speaker-out-positive' },
      'CH1-': { role: 'speaker-out-negative' },
      'CH2+': { role: 'speaker-out-positive' },
      'CH2-': { role: 'speaker-out-negative' },
    },
    controls: {
      GAIN: { what: 'gain', form: 'knob', panel: 'left', safe: 'fully down', why: 'no signal passes' },
      PHASE: { what: 'phase', form: 'switch', panel: 'left', safe: '0', why: 'known polarity' },
      SENSE: { what: 'turn-on-mode', form: 'switch', panel: 'left', safe: 'REMOTE', why: 'wired turn-on' },
    },
  },
  dsp: {
    kind: 'processor',
    title: 'Processor',
    ...body,
    supply: { type: 'regulated', fuse: '5 A', draw: '1 A', 'turn-on-draw': '20 mA' },
    terminals: {
      'B+': { role: 'supply-positive' },
      GND: { role: 'supply-negative' },
      'REM-IN': { role: 'turn-on-in' },
      'REM-OUT': { role: 'turn-on-out', current: '300 mA' },
      IN: { role: 'signal-in', joint: 'phono', signal: '2 V' },
      OUT1: { role: 'signal-out', joint: 'phono', signal: '4 V' },
      OUT2: { role: 'signal-out', joint: 'phono', signal: '4 V' },
    },
  },
  radio: {
    kind: 'source-unit',
    title: 'Radio',
    ...body,
    supply: { type: 'regulated', fuse: '10 A', draw: '3 A' },
    terminals: {
      'B+': { role: 'supply-positive' },
      GND: { role: 'supply-negative' },
      REM: { role: 'turn-on-out', current: '300 mA' },
      OUT: { role: 'signal-out', joint: 'phono', signal: '4 V' },
    },
  },
  tweeter: {
    kind: 'speaker',
    title: 'Tweeter',
    ...body,
    band: 'tweeter',
    power: '80 W',
    'lowest-frequency': '2500 Hz',
    coils: { T: { positive: 'T+', negative: 'T-', nominal: '4 ohm' } },
    terminals: { 'T+': { role: 'coil-positive' }, 'T-': { role: 'coil-negative' } },
  },
  woofer: {
    kind: 'speaker',
    title: 'Subwoofer',
    ...body,
    band: 'subwoofer',
    power: '200 W',
    coils: { C: { positive: 'C+', negative: 'C-', nominal: '4 ohm' } },
    terminals: { 'C+': { role: 'coil-positive' }, 'C-': { role: 'coil-negative' } },
  },
  vented: {
    kind: 'enclosure',
    title: 'Ported enclosure',
    ...body,
    volume: '40 L',
    loading: 'ported',
    tuning: '36 Hz',
    terminals: {},
  },
  relay: {
    kind: 'relay',
    title: 'Relay',
    ...body,
    'coil-current': '150 mA',
    'contact-current': '30 A',
    suppression: 'diode',
    terminals: {
      '86': { role: 'relay-coil' },
      '85': { role: 'relay-coil' },
      '30': { role: 'relay-contact' },
      '87': { role: 'relay-contact' },
    },
  },
  plywood: {
    kind: 'board-sheet',
    title: 'Birch plywood',
    material: 'birch-plywood',
    thickness: '12 mm',
    width: '1500 mm',
    height: '1500 mm',
    density: '680 kg/m3',
    modulus: '9 GPa',
  },
  screw: { kind: 'fixing', title: 'Screw', form: 'machine-screw', thread: 'M6', length: '40 mm' },
  loom: { kind: 'covering', title: 'Loom', form: 'loom', bore: '25 mm', withstands: '125 C' },
  lug: {
    kind: 'terminal',
    title: 'Lug',
    form: 'ring-lug',
    takes: { from: '6 AWG', to: '4 AWG' },
    stud: 'M8',
  },
  reducer: { kind: 'terminal', title: 'Reducer', form: 'reducer', takes: { from: '2 AWG', to: '1/0 AWG' } },
  unmarked: { kind: 'wire', title: 'Unmarked wire', size: '4 AWG', colour: 'RD', for: ['power'] },
  clad: {
    kind: 'wire',
    title: 'Clad wire',
    size: '4 AWG',
    material: 'copper-clad-aluminium',
    insulation: '105 C',
    colour: 'RD',
    for: ['power'],
  },
  'nine-wire': {
    kind: 'cable',
    title: 'Cable of three conductors',
    form: 'multi-conductor',
    conductors: {
      white: { size: '18 AWG', colour: 'WH' },
      grey: { size: '18 AWG', colour: 'GY' },
      blue: { size: '18 AWG', colour: 'BU' },
    },
    insulation: '80 C',
    for: ['speaker', 'turn-on'],
  },
});

const vehicle = (): Written['vehicle'] => ({
  rackleaf: 1,
  id: 'wagon',
  title: 'Estate car',
  'vehicle-load': '45 A',
  fitted: {
    battery: { part: 'agm', zone: 'engine-bay', side: 'left' },
    alternator: { part: 'generator', zone: 'engine-bay' },
  },
  grounds: {
    cargo: { zone: 'cargo', stud: 'M8' },
    dash: { zone: 'cabin', stud: 'M6' },
    engine: { zone: 'engine-bay', stud: 'M8' },
  },
  links: {
    charge: { from: 'alternator.B+', to: 'battery.POS', size: '4 AWG', length: '1 m' },
    strap: { from: 'battery.NEG', to: 'body.engine', size: '4 AWG', length: '300 mm' },
    block: { from: 'alternator.CASE', to: 'body.engine', size: '4 AWG', length: '300 mm' },
  },
  spaces: {
    well: {
      title: 'Side well',
      zone: 'cargo',
      side: 'left',
      outline: [
        ['0 mm', '0 mm'],
        ['800 mm', '0 mm'],
        ['800 mm', '500 mm'],
        ['0 mm', '500 mm'],
      ],
      depth: '200 mm',
      right: 'rear',
      upward: 'up',
      air: '60 L',
      'sound-points': {
        p1: {
          x: '50 mm',
          y: '50 mm',
          stud: 'M6',
          what: 'rivet nut',
          behind: 'nothing',
          'free-depth': '30 mm',
        },
        p2: { x: '450 mm', y: '50 mm', stud: 'M6', what: 'rivet nut', behind: 'nothing' },
      },
    },
  },
  routes: {
    'left-sill': {
      title: 'Left sill',
      side: 'left',
      passes: [
        { zone: 'engine-bay', length: '1 m' },
        { zone: 'sill', length: '3 m' },
      ],
    },
    'right-sill': { title: 'Right sill', side: 'right', passes: [{ zone: 'sill', length: '3 m' }] },
  },
  places: {
    bay: { title: 'Beside the battery', zone: 'engine-bay', side: 'left' },
    dash: { title: 'Dashboard', zone: 'cabin', side: 'middle' },
    door: { title: 'Left door', zone: 'cabin', side: 'left' },
    boot: { title: 'Boot', zone: 'cargo', side: 'middle' },
  },
});

const job = (): Written['job'] => ({
  rackleaf: 1,
  id: 'demo',
  title: 'Demo',
  revision: 'A',
  status: 'draft',
  'issued-on': '2026-03-14',
  vehicle: 'wagon',
  space: 'well',
  devices: {
    'main-fuse': { part: 'holder', in: 'bay' },
    block: { part: 'fused', on: 'main' },
    ground: { part: 'bar', on: 'main' },
    amp: { part: 'two-channel', on: 'main' },
    dsp: { part: 'dsp', on: 'main' },
    radio: { part: 'radio', in: 'dash' },
    tweeter: { part: 'tweeter', in: 'door' },
    sub: { part: 'woofer', in: 'boot' },
    box: { part: 'vented', in: 'boot' },
  },
  links: {
    feed: { from: 'battery.POS', to: 'main-fuse.IN' },
    main: { from: 'main-fuse.OUT', to: 'block.IN' },
    'amp-feed': { from: 'block.OUT1', to: 'amp.B+' },
    'dsp-feed': { from: 'block.OUT2', to: 'dsp.B+' },
    'radio-feed': { from: 'block.OUT3', to: 'radio.B+' },
    'amp-ground': { from: 'amp.GND', to: 'ground.G1' },
    'dsp-ground': { from: 'dsp.GND', to: 'ground.G2' },
    'radio-ground': { from: 'radio.GND', to: 'body.dash' },
    'board-ground': { from: 'ground.G0', to: 'body.cargo' },
    'radio-rem': { from: 'radio.REM', to: 'dsp.REM-IN' },
    'amp-rem': { from: 'dsp.REM-OUT', to: 'amp.REM' },
    'radio-signal': { from: 'radio.OUT', to: 'dsp.IN' },
    'signal-1': { from: 'dsp.OUT1', to: 'amp.IN1' },
    'signal-2': { from: 'dsp.OUT2', to: 'amp.IN2' },
    'speaker-1': { from: 'amp.CH1', to: 'tweeter.T' },
    'speaker-2': { from: 'amp.CH2', to: 'sub.C' },
  },
  boards: {
    main: {
      sheet: 'plywood',
      outline: { rectangle: { width: '500 mm', height: '300 mm' } },
      fixings: { a: { point: 'p1', fixing: 'screw' }, b: { point: 'p2', fixing: 'screw' } },
    },
  },
  runs: {
    left: { route: 'left-sill', links: ['main'], covering: 'loom' },
    right: { route: 'right-sill', links: ['radio-signal'] },
  },
});

/** A small job that no rule has anything to say of. */
export function written(): Written {
  return {
    shop: { rackleaf: 1, name: 'Test bench' },
    vehicle: vehicle(),
    parts: parts(),
    job: job(),
  };
}
