import type { FindingEntry } from './entry.ts';
import { commonPractice, shopStock } from './source.ts';

/** What the shelf has, the order of work, and what was measured. */
export const stockAndRecordFindings = {
  'stock-short': {
    asks: 'The shelf has what the job takes; a length comes off one reel.',
    levels: ['caution'],
    ...shopStock,
  },
  'steps-wait-for-each-other': {
    asks: 'No steps of the work wait for each other.',
    levels: ['stop'],
    source: 'the order of work',
  },
  'as-built-differs': {
    asks: 'What was measured agrees with what was predicted.',
    levels: ['caution'],
    ...commonPractice,
  },
  'as-built-unknown': {
    asks: 'A reading is written under the name of a line of the record.',
    levels: ['caution'],
    source: 'the record of measurements',
  },
  'as-built-unit': {
    asks: 'A reading is written in a unit of its line.',
    levels: ['caution'],
    source: 'the record of measurements',
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;
