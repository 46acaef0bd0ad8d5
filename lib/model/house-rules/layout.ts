import { inch, type RuleDefinition } from './definition.ts';

const judged = { citation: 'house judgement, no source', mark: 'cp' } as const;

/** How layouts of a board are proposed, and what each thing counts for in their score, in metres of wire. */
export const layoutRules = {
  'layout-step': {
    says: 'Lattice on which places are looked for',
    dimension: 'length',
    value: 0.5 * inch,
    above: 0,
    ...judged,
  },
  'layout-tape': {
    says: 'Lattice on which parts are brought into line: what a tape shows',
    dimension: 'length',
    value: inch / 16,
    above: 0,
    ...judged,
  },
  'layout-crossing': {
    says: 'Two wires that cross count in the score of a layout as so much wire',
    dimension: 'length',
    value: 0.15,
    least: 0,
    ...judged,
  },
  'layout-bend': {
    says: 'A bend of a wire counts as so much wire',
    dimension: 'length',
    value: 0.03,
    least: 0,
    ...judged,
  },
  'layout-quarter': {
    says: 'A terminal a quarter turn off the side that its wire comes from or leaves by counts as so much wire',
    dimension: 'length',
    value: 0.05,
    least: 0,
    ...judged,
  },
  'layout-near-signal': {
    says: 'Distance that power lacks to signal, its weight in the score of a layout',
    dimension: 'ratio',
    value: 1,
    least: 0,
    ...judged,
  },
  'layout-access': {
    says: 'Room that plugs and bends lack, its weight in the score',
    dimension: 'ratio',
    value: 10,
    least: 0,
    ...judged,
  },
  'layout-air': {
    says: 'Air and gaps that are missing, their weight in the score',
    dimension: 'ratio',
    value: 10,
    least: 0,
    ...judged,
  },
  'layout-balance': {
    says: 'Distance of the centre of gravity from the middle of the board, its weight in the score',
    dimension: 'ratio',
    value: 0.5,
    least: 0,
    ...judged,
  },
  'layout-alignment': {
    says: 'A part that shares no edge and no centre line with another counts, each way, as so much wire',
    dimension: 'length',
    value: 0.12,
    least: 0,
    ...judged,
  },
  'layout-gaps': {
    says: 'Difference of the gaps on both sides of a part, its weight in the score',
    dimension: 'ratio',
    value: 0.5,
    least: 0,
    ...judged,
  },
  'layout-pair': {
    says: 'Two like parts that are neither in line nor mirrored count as so much wire',
    dimension: 'length',
    value: 0.2,
    least: 0,
    ...judged,
  },
  'layout-companion': {
    says: 'Distance of a ground bar from the distribution that it belongs to, its weight in the score',
    dimension: 'ratio',
    value: 0.5,
    least: 0,
    ...judged,
  },
  'layout-margin': {
    says: 'Free margin round the parts of a board where there is room',
    dimension: 'length',
    value: 1.5 * inch,
    least: 0,
    ...judged,
  },
  'layout-margin-weight': {
    says: 'Margin that is missing, its weight in the score',
    dimension: 'ratio',
    value: 3,
    least: 0,
    ...judged,
  },
  'layout-head': {
    says: 'The head of a fixing before a panel counts as so much wire',
    dimension: 'length',
    value: 0.3,
    least: 0,
    ...judged,
  },
} as const satisfies Record<string, RuleDefinition>;
