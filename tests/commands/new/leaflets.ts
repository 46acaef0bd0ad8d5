import type { KindName } from '../../../lib/model/kinds/index.ts';

type Leaflet = Readonly<Record<string, readonly string[]>>;

/** A case without holes. */
const unmounted = ['10 in, 6 1/2 in, 2 1/8 in, 3.2 kg'];

const mounting = {
  case: ['10 in, 6 1/2 in, 2 1/8 in, 3.2 kg, corners, 3/8 in, 3/16 in'],
};

/** What leaflets of invented parts tell, one of each kind, as it is answered. */
export const leaflets: { readonly [K in KindName]: Leaflet } = {
  amplifier: {
    ...mounting,
    cooling: ['1 in, fan, fins, fins 1 1/4 in, 1 1/2 in'],
    terminal: [
      'B+ GND, supply, right, 5/8 in, 3/4 in, set-screw, 8 AWG to 4 AWG, 4 N m, 5/8 in',
      'REM, turn-on-in, right, 2 in, , set-screw, 20 AWG to 14 AWG, 0.6 N m, 5/16 in',
      'CH1..5, speaker-out, right, 2 5/8 in, 3/8 in, set-screw, 18 AWG to 10 AWG, 1.2 N m, 3/8 in',
      'IN1..6, signal-in, left, 1/2 in, 1/2 in, phono, 0.25 V to 6 V',
    ],
    channel: [
      '1..4, CH1..4, IN1..4, 2 ohm, 55 W at 4 ohm, 85 W at 2 ohm',
      '5, CH5, IN5 IN6, 2 ohm, 250 W at 2 ohm',
    ],
    bridge: ['1+2, CH1+, CH2-, IN1, 4 ohm, 170 W at 4 ohm'],
    control: [
      'GAIN-12, gain, left, 4 5/8 in, 1..2',
      'XOVER-12, crossover-mode, left, 5 in, 1..2, FULL HPF=high-pass, butterworth 12 dB',
      'FREQ-12, crossover, face, , 1..2, 50 Hz to 250 Hz, , 80 Hz',
      'LOW-PASS, crossover, face, , 5, low-pass 40 Hz to 250 Hz, butterworth 24 dB, 80 Hz',
      'BOOST, boost, face, , 5, 45 Hz 0 dB to 12 dB',
    ],
    supply: ['regulated, 60 A, 2, class-d, 1.1 A, 78 %, 14.4 V, 60 mA, 1.5 mA, 10.5 V, 55 %'],
    facts: ['150 W, 70 C'],
  },
  processor: {
    ...mounting,
    terminal: [
      'B+ GND, supply, right, 5/8 in, 3/4 in, set-screw, 18 AWG to 12 AWG',
      'REM, turn-on-in, right, 2 in, , set-screw, 20 AWG to 14 AWG',
      'REM-OUT, turn-on-out, right, 2 1/2 in, , set-screw, 20 AWG to 14 AWG',
      'IN1..6, signal-in, left, 1/2 in, 1/2 in, phono, 0.25 V to 6 V',
      'OUT1..6, signal-out, top, 1/2 in, 1/2 in, phono, 4 V',
    ],
    supply: ['regulated, 5 A, 1.2 A, 5 mA'],
    menu: ['1 2 4, butterworth linkwitz-riley, 20 Hz, 20 kHz, OUT1 OUT2, 96 kHz, yes'],
  },
  'source-unit': {
    case: unmounted,
    terminal: [
      'B+ GND, supply',
      'REM-OUT, turn-on-out',
      'OUT1..4, signal-out, , , , , 4 V',
      'SP1..4, speaker-out, , , , , 18 W at 4 ohm',
    ],
    supply: ['regulated, 10 A, 2 A'],
  },
  speaker: {
    case: ['10 in, 10 in, 5 1/4 in, 4.6 kg'],
    facts: ['subwoofer, 250 W, 28 Hz, 9 in, C1..2, 4 ohm, 3.4 ohm, binding-post, 16 AWG to 10 AWG'],
    box: ['sealed, 15 L, 25 L'],
  },
  enclosure: { case: unmounted, facts: ['45 L, ported, 33 Hz, 11 1/8 in, 11 1/2 in'] },
  battery: {
    case: ['242 mm, 175 mm, 190 mm, 15 kg'],
    posts: ['POS NEG, stud, M8, 8 AWG to 1/0 AWG, 10 N m, 4'],
    facts: ['flooded, 60 Ah, 540 A, 1.6 kA'],
  },
  alternator: {
    case: ['185 mm, 190 mm, 185 mm, 6.9 kg'],
    posts: ['B+ CASE, stud, M8, , 12 N m, 2'],
    facts: ['180 A, 14.4 V, no'],
  },
  'fuse-holder': {
    ...mounting,
    posts: ['IN OUT, set-screw, , 8 AWG to 4 AWG, 4 N m'],
    facts: ['small-bolt-in, 150 A'],
  },
  fuse: { facts: ['small-bolt-in, 60 A, 32 V, 2 kA'] },
  distribution: {
    ...mounting,
    terminal: [
      'IN, feed-in, left, 1 in, , set-screw, 4 AWG to 1/0 AWG',
      'OUT1..4, feed-out, right, 1/2 in, 3/4 in, set-screw, 8 AWG to 4 AWG',
    ],
    way: ['OUT1..4, IN, small-bolt-in'],
    facts: ['200 A'],
  },
  wire: { facts: ['4 AWG, RD, power, 105 C'] },
  cable: {
    conductor: ['white, 18 AWG, WH', 'white-black, 18 AWG, WH/BK'],
    facts: ['coaxial, signal, 80 C, 5 mm, 3 ft, phono'],
    filter: ['high-pass, butterworth, 1, 300 Hz'],
  },
  relay: {
    ...mounting,
    terminal: ['85 86, relay-coil, bottom, 1/4 in, 3/8 in', '30 87, relay-contact, bottom, 1 in, 3/8 in'],
    facts: ['160 mA, 30 A, diode'],
  },
  terminal: { sizes: ['8 AWG'], facts: ['ring-lug, M8'] },
  covering: { facts: ['loom, 13 mm, 105 C'] },
  grommet: { facts: ['20 mm, 13 mm'] },
  'board-sheet': { facts: ['birch-plywood, 12 mm, 5 ft, 5 ft, 680 kg/m3, 10.7 GPa'] },
  fixing: { facts: ['wood-screw, #8, 3/4 in'] },
  'level-control': { case: unmounted, terminal: ['LINE, control-line'] },
  crossover: {
    case: unmounted,
    terminal: ['IN, coil, left, 1 in, 3/8 in', 'W T, speaker-out, right, 1/2 in, 1/2 in'],
    band: ['W, up to 3 kHz', 'T, from 3 kHz'],
    facts: ['4 ohm, 90 W, 2'],
  },
  'isolating-relay': {
    ...mounting,
    terminal: ['A B, relay-contact, top, 1 in, 2 in', '85 86, relay-coil, bottom, 1 in, 3/8 in'],
    facts: ['coil, 1 A, diode, 200 A, yes'],
  },
  charger: {
    ...mounting,
    terminal: ['IN GND, supply, left, 1 in, 1 in', 'OUT, source-positive, right, 1 in'],
    input: ['60 A, 90 %, 2 mA, 20 mA, charging-voltage'],
    output: ['14.4 V, 50 A, 60 A'],
  },
  'capacitor-bank': {
    ...mounting,
    posts: ['POS NEG, stud, M8, 8 AWG to 1/0 AWG'],
    facts: ['100 F, 2 mohm, 16 V, 100 A'],
  },
  fan: {
    ...mounting,
    terminal: ['+, turn-on-in, left, 1/2 in', '-, supply-negative, left, 1 in'],
    facts: ['60 m3/h, 150 mA'],
  },
};

/** The flags that give a leaflet. */
export function leafletFlags(leaflet: Leaflet): readonly string[] {
  return Object.entries(leaflet).flatMap(([key, lines]) => lines.flatMap((line) => [`--${key}`, line]));
}
