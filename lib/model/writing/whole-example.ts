import type { KindName } from '../kinds/index.ts';
import { kinds } from '../kinds/index.ts';
import { fieldExample } from './field-example.ts';
import type { Written } from './field-text.ts';

type WrittenPart = { readonly [field: string]: Written };

const setScrew = { panel: 'right', joint: 'set-screw' } as const;
const battery: WrittenPart = {
  NEG: { role: 'source-negative', joint: 'post-clamp' },
  POS: { role: 'source-positive', joint: 'post-clamp' },
};
const supply: WrittenPart = {
  'B+, GND': { role: 'supply', ...setScrew, at: '5/8 in', pitch: '3/4 in', takes: '8 AWG to 4 AWG' },
};
const contact: WrittenPart = {
  '30, 87': { role: 'relay-contact', joint: 'blade-tab' },
  '85, 86': { role: 'relay-coil', joint: 'blade-tab' },
};

/** Terminals of a part, kind by kind, where its own fields speak of them. */
const terminals: Readonly<Partial<Record<KindName, WrittenPart>>> = {
  amplifier: {
    ...supply,
    REM: { role: 'turn-on-in', ...setScrew, at: '2 in', takes: '20 AWG to 14 AWG' },
    CH1: { role: 'speaker-out', ...setScrew, at: '2 5/8 in', pitch: '3/8 in', takes: '18 AWG to 10 AWG' },
    IN1: { role: 'signal-in', panel: 'left', at: '1/2 in', joint: 'phono', signal: '4 V' },
  },
  processor: {
    ...supply,
    IN1: { role: 'signal-in', joint: 'phono' },
    OUT1: { role: 'signal-out', joint: 'phono' },
  },
  'source-unit': { ...supply, OUT1: { role: 'signal-out', joint: 'phono', signal: '4 V' } },
  crossover: {
    IN: { role: 'coil', joint: 'set-screw' },
    'W, T': { role: 'speaker-out', joint: 'set-screw' },
  },
  speaker: { C1: { role: 'coil', joint: 'blade-tab' } },
  enclosure: {},
  battery,
  alternator: {
    'B+': { role: 'source-positive', joint: 'stud', stud: 'M8' },
    CASE: { role: 'source-negative', joint: 'stud', stud: 'M8' },
  },
  'fuse-holder': {
    IN: { role: 'feed-in', panel: 'left', joint: 'set-screw' },
    OUT: { role: 'feed-out', panel: 'right', joint: 'set-screw' },
  },
  distribution: {
    IN: { role: 'feed-in', panel: 'left', joint: 'set-screw' },
    'OUT1..2': { role: 'feed-out', panel: 'right', at: '1/2 in', pitch: '1 in', joint: 'set-screw' },
  },
  relay: contact,
  'isolating-relay': {
    '30, 87': { role: 'relay-contact', joint: 'stud', stud: 'M8' },
    GND: { role: 'supply-negative', joint: 'blade-tab' },
  },
  'level-control': { LINE: { role: 'control-line' } },
  charger: {
    IN: { role: 'supply-positive', joint: 'stud', stud: 'M6' },
    GND: { role: 'supply-negative', joint: 'stud', stud: 'M6' },
    OUT: { role: 'source-positive', joint: 'stud', stud: 'M6' },
  },
  fan: {
    '+': { role: 'turn-on-in', joint: 'blade-tab' },
    '-': { role: 'supply-negative', joint: 'blade-tab' },
  },
  'capacitor-bank': {
    NEG: { role: 'source-negative', joint: 'stud', stud: 'M8' },
    POS: { role: 'source-positive', joint: 'stud', stud: 'M8' },
  },
};

/** A whole part of a kind with no more than it needs, as a file may hold it. */
export function wholeExample(kind: KindName): WrittenPart {
  const part = fieldExample(kinds[kind].schema);
  const own = terminals[kind];
  if (typeof part !== 'object' || part === null || Array.isArray(part))
    throw new Error(`A part of the kind ${kind} has no example.`);
  return { ...part, ...(own && { terminals: own }) };
}
