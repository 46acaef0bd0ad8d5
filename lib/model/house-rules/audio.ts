import { cp, type RuleDefinition } from './definition.ts';

/** Speakers, test tones, delays. */
export const audioRules = {
  'speaker-loss': { says: 'Greatest loss in a speaker wire', dimension: 'level', value: 0.5, ...cp },
  'air-temperature': { says: 'Air temperature for delays', dimension: 'temperature', value: 20, ...cp },
  // A centimetre of the way of the sound; processors round to whole samples or to hundredths of a millisecond.
  'delay-tolerance': {
    says: 'Delays that differ by less are one',
    dimension: 'time',
    value: 0.00003,
    above: 0,
    most: 0.001,
    ...cp,
  },
  'gain-overlap': {
    says: 'How far below full scale the test tone is recorded: what a full-scale passage asks for beyond it',
    dimension: 'level',
    value: 0,
    ...cp,
  },
  'gain-under': {
    says: 'How far below its voltage a gain may read, of the voltage',
    dimension: 'ratio',
    value: 0.05,
    above: 0,
    most: 0.5,
    ...cp,
  },
  'gap-level': {
    says: 'How far below their bands all ways together may be between two corners before nobody is said to play there',
    dimension: 'level',
    value: 6,
    above: 0,
    most: 24,
    ...cp,
  },
  'tone-bass': { says: 'Test tone for bass channels', dimension: 'frequency', value: 50, ...cp },
  'tone-others': { says: 'Test tone for other channels', dimension: 'frequency', value: 1000, ...cp },
  'tone-lowest': {
    says: 'How far a path may be below its highest level at its test tone: beyond it another tone is taken',
    dimension: 'level',
    value: 3,
    least: 0,
    most: 6,
    ...cp,
  },
  'tone-near-highest': {
    says: 'How far below the highest level in the band another test tone may lie: the nearest to the usual one is taken',
    dimension: 'level',
    value: 0.5,
    least: 0,
    most: 3,
    ...cp,
  },
  // Into 4 ohm 2 mV are 1 uW: 30 dB at 1 m from a speaker of 90 dB at 1 W. 6 mV are 40 dB, below a running engine.
  'noise-quiet': {
    says: 'Greatest noise at a speaker output with the inputs shorted, engine off',
    dimension: 'voltage',
    value: 0.002,
    ...cp,
  },
  'noise-running': {
    says: 'Greatest noise at a speaker output with the source on and the engine running',
    dimension: 'voltage',
    value: 0.006,
    ...cp,
  },
} as const satisfies Record<string, RuleDefinition>;
