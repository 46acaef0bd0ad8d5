import { cp, inch, type RuleDefinition } from './definition.ts';

/** Boards: room round parts, mounting, service loops. */
export const boardRules = {
  'loop-vehicle': { says: 'Service loop at the vehicle end', dimension: 'length', value: 12 * inch, ...cp },
  'loop-board': { says: 'Service loop on the board', dimension: 'length', value: 3 * inch, ...cp },
  'loop-speaker': { says: 'Service loop at a speaker', dimension: 'length', value: 6 * inch, ...cp },
  'tie-spacing-vehicle': {
    says: 'Ties or clips in the vehicle, apart',
    dimension: 'length',
    value: 12 * inch,
    ...cp,
  },
  'tie-spacing-board': { says: 'Ties on the board, apart', dimension: 'length', value: 6 * inch, ...cp },
  'gap-parts': { says: 'Gap between parts', dimension: 'length', value: 0.5 * inch, ...cp },
  'gap-fins': { says: 'Air at cooling fins', dimension: 'length', value: 1 * inch, ...cp },
  'gap-fan': { says: 'Air at a fan', dimension: 'length', value: 2 * inch, ...cp },
  'gap-signal-plug': { says: 'Room for signal plugs', dimension: 'length', value: 2 * inch, ...cp },
  'bend-diameters': { says: 'Least bend radius, in outside diameters', dimension: 'count', value: 4, ...cp },
  'gap-power-bend': {
    says: 'Room for a power conductor to bend',
    dimension: 'length',
    value: 3 * inch,
    ...cp,
  },
  'tool-room-knob': { says: 'Room to reach a knob', dimension: 'length', value: 3 * inch, ...cp },
  'tool-room-set-screw': {
    says: 'Straight room to reach a set screw',
    dimension: 'length',
    value: 6 * inch,
    ...cp,
  },
  'part-tolerance': { says: "Tolerance of a part's size", dimension: 'length', value: 0.003, ...cp },
  'power-signal-distance': {
    says: 'Power from signal on the board',
    dimension: 'length',
    value: 3 * inch,
    ...cp,
  },
  'web-good': { says: 'Narrowest web that is good', dimension: 'length', value: 0.025, ...cp },
  'web-limit': { says: 'Narrowest web allowed', dimension: 'length', value: 0.012, ...cp },
  'hole-edge': { says: 'Hole to edge', dimension: 'length', value: 0.012, ...cp },
  'hole-corner': { says: 'Hole to a corner, in fibreboard', dimension: 'length', value: 0.025, ...cp },
  'first-mode': {
    says: 'Lowest first natural frequency of the loaded board',
    dimension: 'frequency',
    value: 30,
    ...cp,
  },
  'first-mode-bass': { says: 'The same beside a subwoofer', dimension: 'frequency', value: 80, ...cp },
  retention: {
    says: 'Forward load that the fixings hold, in g',
    dimension: 'count',
    value: 20,
    citation: 'quoted from memory',
    mark: 'mem',
  },
} as const satisfies Record<string, RuleDefinition>;
