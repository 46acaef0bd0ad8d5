import type { FindingEntry } from './entry.ts';
import { commonPractice, geometry, partData, shopStock } from './source.ts';

/** What the shelf has, the order of work, and what was measured. */
export const stockAndRecordFindings = {
  'part-data-unlikely': {
    asks: 'The figures of a part fit together: mass and size, holes and terminals on its body, powers and loads, coils, fuse and draw.',
    levels: ['caution'],
    ...partData,
  },
  'space-seen-from-behind': {
    asks: 'The plane of a space faces into the vehicle: seen from the other side its board comes out mirrored.',
    levels: ['caution'],
    ...geometry,
  },
  'edge-on-other-side': {
    asks: 'A route along one side of the vehicle does not reach a board at the edge that lies towards the other side.',
    levels: ['caution'],
    ...geometry,
  },
  'space-measures-differ': {
    asks: 'Air and walls of a space fit its outline and depth, and what stands in it lies within them.',
    levels: ['caution'],
    ...geometry,
  },
  'revision-not-listed': {
    asks: 'The revision of a job is the last one of its list.',
    levels: ['caution'],
    source: 'the record of revisions',
  },
  'stock-short': {
    asks: 'The shelf has the lengths that the job takes, each on one reel.',
    levels: ['caution'],
    ...shopStock,
  },
  'stock-not-counted': {
    asks: 'What a job takes from the shelf was counted there.',
    levels: ['note'],
    ...shopStock,
  },
  'to-order': {
    asks: 'The shelf has the pieces that the job takes; what it lacks is one list to order from.',
    levels: ['caution'],
    ...shopStock,
  },
  'stock-promised-over': {
    asks: 'The shelf has what is promised to jobs that are released and not built in yet.',
    levels: ['caution'],
    ...shopStock,
  },
  'steps-wait-for-each-other': {
    asks: 'No steps of the work wait for each other.',
    levels: ['stop'],
    source: 'the order of work',
  },
  'acceptance-of-stop': {
    asks: 'No stop is accepted: what stops a job is mended.',
    levels: ['caution'],
    source: 'the list of findings',
  },
  'acceptance-outdated': {
    asks: 'What was accepted still has the value and the limit that were seen.',
    levels: ['note'],
    source: 'the list of findings',
  },
  'acceptance-pointless': {
    asks: 'What is accepted is a caution that is found.',
    levels: ['note'],
    source: 'the list of findings',
  },
  'photo-without-words': {
    asks: 'A photo says what is seen on it.',
    levels: ['note'],
    source: 'WCAG 2.2, 1.1.1',
  },
  'photo-of-nothing': {
    asks: 'A photo is of one step, one device or one place that is there.',
    levels: ['caution'],
    source: 'the names of the job, its plan and its vehicle',
  },
  'word-of-name': {
    asks: 'No text of a job holds a word of the name of its customer: it is printed and indexed.',
    levels: ['caution'],
    source: 'the texts of the job',
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
