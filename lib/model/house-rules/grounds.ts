import { cp, inch, type RuleDefinition } from './definition.ts';

/** Ground leads, and the body as their way back. */
export const groundRules = {
  'body-resistance': {
    says: 'Resistance of the body as ground path',
    dimension: 'resistance',
    value: 0.001,
    spread: { weak: 0.001, strong: 0.0005 },
    ...cp,
  },
  'ground-drop-good': { says: 'Ground-side drop that is good', dimension: 'voltage', value: 0.1, ...cp },
  'ground-drop-limit': { says: 'Greatest ground-side drop', dimension: 'voltage', value: 0.2, ...cp },
  'lug-palm': {
    says: 'Thickness of the palm of a lug, below the head of its bolt',
    dimension: 'length',
    value: 0.003,
    above: 0,
    most: 0.01,
    ...cp,
  },
  'ground-panel': {
    says: 'Panel that a bolt goes through at a ground point',
    dimension: 'length',
    value: 0.003,
    above: 0,
    most: 0.01,
    ...cp,
  },
  'ground-lead': { says: 'Longest ground lead', dimension: 'length', value: 18 * inch, ...cp },
} as const satisfies Record<string, RuleDefinition>;
