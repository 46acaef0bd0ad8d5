import { cp, type RuleDefinition } from './definition.ts';

const abyc = { citation: 'ABYC E-11', mark: 'mem' } as const;
const dcShort = { citation: 'IEC 61660-1', mark: 'mem' } as const;

/** What fuses of a form interrupt where their maker is silent. Printed figures run from 1 to 2.5 kA: the least counts. */
const silent = {
  dimension: 'current',
  value: 1000,
  above: 0,
  citation: 'quoted from memory: the least of the figures that makers print',
  mark: 'mem',
} as const;

/**
 * Currents of a dead short, and what fuses interrupt. Each figure stands on the side that lets the greater current
 * through, unlike those for drop.
 */
export const faultRules = {
  'short-resistance-flooded': {
    says: 'Lowest internal resistance of a flooded battery, into a short',
    dimension: 'resistance',
    value: 0.0045,
    above: 0,
    ...cp,
  },
  'short-resistance-agm': {
    says: 'Lowest internal resistance of an absorbed glass mat battery, into a short',
    dimension: 'resistance',
    value: 0.002,
    above: 0,
    ...cp,
  },
  'short-alternator-share': {
    says: 'What an alternator gives into a short at first, of its rating',
    dimension: 'ratio',
    value: 3,
    least: 1,
    ...cp,
  },
  'short-conductor-temperature': {
    says: 'Conductor temperature when a short begins',
    dimension: 'temperature',
    value: 20,
    above: -60,
    most: 60,
    ...dcShort,
  },
  'short-body-resistance': {
    says: 'Lowest resistance of the body as ground path, into a short',
    dimension: 'resistance',
    value: 0.0005,
    ...cp,
  },
  'short-fuse-cold': {
    says: 'Resistance of a cold fuse, of that at its rating',
    dimension: 'ratio',
    value: 0.7,
    most: 1,
    ...cp,
  },
  'interrupt-to-650': {
    says: 'A main fuse interrupts, batteries of up to 650 A cold cranking together',
    dimension: 'current',
    value: 1500,
    ...abyc,
  },
  'interrupt-to-1100': {
    says: 'A main fuse interrupts, batteries of up to 1,100 A cold cranking together',
    dimension: 'current',
    value: 3000,
    ...abyc,
  },
  'interrupt-above': {
    says: 'A main fuse interrupts, larger batteries',
    dimension: 'current',
    value: 5000,
    ...abyc,
  },
  'interrupt-micro-blade': { says: 'A micro blade fuse interrupts, where its maker is silent', ...silent },
  'interrupt-low-profile-mini-blade': {
    says: 'A low-profile mini blade fuse interrupts, where its maker is silent',
    ...silent,
  },
  'interrupt-mini-blade': { says: 'A mini blade fuse interrupts, where its maker is silent', ...silent },
  'interrupt-standard-blade': {
    says: 'A standard blade fuse interrupts, where its maker is silent',
    ...silent,
  },
  'interrupt-maxi-blade': { says: 'A maxi blade fuse interrupts, where its maker is silent', ...silent },
  'interrupt-bolt-in-30mm': {
    says: 'A bolt-in fuse of 30 mm interrupts, where its maker is silent',
    ...silent,
  },
  'interrupt-small-bolt-in': {
    says: 'A small bolt-in fuse interrupts, where its maker is silent',
    ...silent,
  },
  'interrupt-large-bolt-in': {
    says: 'A large bolt-in fuse interrupts, where its maker is silent',
    ...silent,
  },
  'interrupt-bolt-in-51mm': {
    says: 'A bolt-in fuse of 51 mm interrupts, where its maker is silent',
    ...silent,
  },
  'interrupt-class-t': {
    says: 'A Class T fuse interrupts direct current, where its maker is silent',
    dimension: 'current',
    value: 20000,
    above: 0,
    citation: 'UL 248-15',
    mark: 'mem',
  },
} as const satisfies Record<string, RuleDefinition>;
