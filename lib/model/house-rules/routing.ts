import type { RuleDefinition } from './definition.ts';

const judged = { citation: 'house judgement, no source', mark: 'cp' } as const;

/** What each thing counts for as the wires of a board are laid, in metres of thin wire. */
export const routingRules = {
  'routing-crossing': {
    says: 'Two wires that cross on their board count as so much wire, where more than eight are laid',
    dimension: 'length',
    value: 0.5,
    least: 0,
    ...judged,
  },
  'routing-bend': {
    says: 'A bend of a wire counts as so much wire, where more than eight are laid',
    dimension: 'length',
    value: 0.13,
    least: 0,
    ...judged,
  },
  'routing-bend-radius': {
    says: 'A bend counts besides for so many times its radius',
    dimension: 'ratio',
    value: 0.5,
    least: 0,
    ...judged,
  },
  'routing-thick': {
    says: 'Diameter of a wire that counts twice as much as a thin one of its length',
    dimension: 'length',
    value: 0.02,
    above: 0,
    ...judged,
  },
  'routing-near-signal': {
    says: 'Power and signal side by side, their weight where wires are laid: for each metre, at no distance',
    dimension: 'ratio',
    value: 2,
    least: 0,
    ...judged,
  },
  'routing-pair': {
    says: 'Length that the two wires of a pair run apart, its weight where wires are laid',
    dimension: 'ratio',
    value: 0.5,
    least: 0,
    ...judged,
  },
  'routing-round': {
    says: 'A wire that is led far round, or by three quarters of a circle round something, counts as so much wire, where more than eight are laid',
    dimension: 'length',
    value: 0.4,
    least: 0,
    ...judged,
  },
  'routing-bundle': {
    says: 'Each bundle of a run that leaves by a side, beyond the first, counts as so much wire',
    dimension: 'length',
    value: 0.3,
    least: 0,
    ...judged,
  },
  'routing-crossing-few': {
    says: 'Two wires that cross count as so much wire, where no more than eight are laid',
    dimension: 'length',
    value: 0.15,
    least: 0,
    ...judged,
  },
  'routing-bend-few': {
    says: 'A bend of a wire counts as so much wire, where no more than eight are laid',
    dimension: 'length',
    value: 0.02,
    least: 0,
    ...judged,
  },
} as const satisfies Record<string, RuleDefinition>;
