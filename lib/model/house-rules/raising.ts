import { cp, type RuleDefinition } from './definition.ts';

/** What stands on a board or behind it: ribs, risers, the pads of fixings, and the screws that hold them. */
export const raisingRules = {
  'rib-clearance': {
    says: 'Room between a rib and fixings, holes, cut-outs, parts, obstacles and the panel behind',
    dimension: 'length',
    value: 0.006,
    ...cp,
  },
  'rib-screw-spacing': {
    says: 'Screws along a rib, apart',
    dimension: 'length',
    value: 0.125,
    above: 0,
    ...cp,
  },
  'rib-screw-end': {
    says: 'First and last screw of a rib, from its ends',
    dimension: 'length',
    value: 0.03,
    ...cp,
  },
  'rib-screw-bite': { says: 'Least bite of a screw in a rib', dimension: 'length', value: 0.012, ...cp },
  'rib-screw-skin': {
    says: 'What is left of a rib beyond the point of a screw',
    dimension: 'length',
    value: 0.003,
    ...cp,
  },
  'rib-two-rows': {
    says: 'Width from which a rib is screwed in two rows',
    dimension: 'length',
    value: 0.06,
    above: 0,
    ...cp,
  },
  'rib-row-inside': {
    says: 'Row of screws from the side of a wide rib',
    dimension: 'length',
    value: 0.02,
    ...cp,
  },
  // About 2.5 diameters of a #8.
  'screw-bite': {
    says: 'Least bite of a wood screw that holds a part',
    dimension: 'length',
    value: 0.01,
    ...cp,
  },
  'screw-skin': {
    says: 'What is left of a board beyond the point of a screw that holds a part',
    dimension: 'length',
    value: 0.001,
    most: 0.006,
    ...cp,
  },
  // Room for a screw with an inch of wood round it.
  'riser-rail': { says: 'Width of a flat riser rail', dimension: 'length', value: 0.038, above: 0, ...cp },
  'spacer-pad': {
    says: 'Side of a pad of sheet below a fixing',
    dimension: 'length',
    value: 0.05,
    above: 0,
    ...cp,
  },
} as const satisfies Record<string, RuleDefinition>;
