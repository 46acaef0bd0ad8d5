import { cp, inch, type RuleDefinition } from './definition.ts';

/** How a fuse is chosen, how far from its source it stands, and what it drops. */
export const fuseRules = {
  'bolt-in-fuse-volt': {
    says: 'Drop of a bolt-in fuse at its rating',
    dimension: 'voltage',
    value: 0.1,
    most: 1,
    ...cp,
  },
  'blade-fuse-volt': {
    says: 'Drop of a blade fuse at its rating',
    dimension: 'voltage',
    value: 0.12,
    most: 1,
    ...cp,
  },
  'fuse-margin': { says: 'Fuse over rated current', dimension: 'ratio', value: 1.25, least: 1, ...cp },
  'fuse-under-maker': {
    says: 'Least fuse of a device, of what its maker states',
    dimension: 'ratio',
    value: 0.5,
    most: 1,
    ...cp,
  },
  'fuse-over-need': {
    says: 'Greatest fuse of a feeder, of what the makers of all that it feeds state together',
    dimension: 'ratio',
    value: 1.6,
    least: 1,
    ...cp,
  },
  'fuse-continuous': { says: 'Continuous load, of the fuse', dimension: 'ratio', value: 0.8, most: 1, ...cp },
  'fuse-distance-good': {
    says: 'Fuse from its source, along the conductor: good',
    dimension: 'length',
    value: 7 * inch,
    citation: '33 CFR 183.455 (a regulation for boats, here a yardstick)',
  },
  'fuse-distance-loomed': {
    says: 'Fuse from its source if loomed',
    dimension: 'length',
    value: 18 * inch,
    ...cp,
  },
  'fuse-distance-sheathed': {
    says: 'Fuse from its source if sheathed all the way',
    dimension: 'length',
    value: 40 * inch,
    citation: '33 CFR 183.455 (a regulation for boats, here a yardstick)',
  },
} as const satisfies Record<string, RuleDefinition>;
