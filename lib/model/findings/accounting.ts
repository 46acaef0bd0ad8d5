import type { FindingEntry } from './entry.ts';
import { accounting, commonPractice, partData } from './source.ts';

/** Terminals, conductors and controls, one by one. */
export const accountingFindings = {
  'job-without-devices': {
    asks: 'A job builds something in.',
    levels: ['stop'],
    ...accounting,
  },
  'terminal-unaccounted': {
    asks: 'Every terminal of every device is connected, or left open with a reason.',
    levels: ['stop'],
    ...accounting,
  },
  'open-only-by-proposal': {
    asks: 'A channel, an output or a pair of the source that drives nothing is written as left open: until then it may be something forgotten.',
    levels: ['caution'],
    ...commonPractice,
  },
  'device-without-supply': {
    asks: 'Every device that draws current has its supply connected.',
    levels: ['stop'],
    ...accounting,
  },
  'cable-conductor-spare': {
    asks: 'A cable is accounted for conductor by conductor: a spare one is used where a turn-on has none, or lies beside it in the same run; else it is capped.',
    levels: ['note'],
    ...commonPractice,
  },
  'control-unlisted': {
    asks: 'Every knob and switch of a device has its state before first power-up written down.',
    levels: ['stop', 'caution'],
    ...accounting,
  },
  'control-unsafe': {
    asks: 'Gain, boost and filters stand in their safe state before first power-up.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'control-position-unknown': {
    asks: 'A switch is preset to a position that it has.',
    levels: ['stop'],
    ...partData,
  },
  'control-left-safe': {
    asks: 'A control that its part wants changed after commissioning is not left in its state of first power-up.',
    levels: ['caution'],
    ...partData,
  },
  'control-final-unknown': {
    asks: 'Of every knob and switch it is written down how it stands after commissioning.',
    levels: ['caution'],
    ...partData,
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;
