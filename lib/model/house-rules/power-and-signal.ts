import { cp, inch, type RuleDefinition } from './definition.ts';

/** What counts as power beside signal, and how far signal stays from it. */
export const powerAndSignalRules = {
  'power-signal-current': {
    says: 'Current from which a conductor counts as power beside signal',
    dimension: 'current',
    value: 5,
    ...cp,
  },
  'power-signal-distance': {
    says: 'Power from signal on the board',
    dimension: 'length',
    value: 3 * inch,
    ...cp,
  },
} as const satisfies Record<string, RuleDefinition>;
