import type { FindingEntry } from './entry.ts';
import { ampacityTable, commonPractice, partData } from './source.ts';

/** What a conductor carries, and what its insulation bears. */
export const conductorFindings = {
  'conductor-under-need': {
    asks: 'A conductor with no fuse before it, such as a ground or a lead to a fuse, carries what the fuses behind it let through.',
    levels: ['stop'],
    ...ampacityTable,
  },
  'conductor-past-limit': {
    asks: 'A conductor keeps every other limit that the plan held it against, such as its drop.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'vehicle-conductor-overloaded': {
    asks: "The vehicle's own conductors that no fuse protects, its charge lead above all, carry what the job makes flow through them.",
    levels: ['stop', 'caution', 'note'],
    restsOnDraw: true,
    ...ampacityTable,
  },
  'conductor-no-reel': {
    asks: 'The catalogue has a reel for each use that a conductor of the job has.',
    levels: ['stop'],
    source: "33 CFR 183.425, Table 5; the parts' data",
  },
  'conductor-none-fits': {
    asks: 'Some cable of the catalogue carries what the conductor must, and goes into its ports.',
    levels: ['stop'],
    source: "33 CFR 183.425, Table 5; the parts' data",
  },
  'conductor-not-on-shelf': {
    asks: 'A reel on the shelf has the length of the conductor in one piece.',
    levels: ['caution'],
    source: "33 CFR 183.425, Table 5; the parts' data",
  },
  'insulation-at-ambient': {
    asks: 'Insulation is rated above the ambient of every zone that it passes; at or below it, it carries nothing.',
    levels: ['stop'],
    ...commonPractice,
  },
  'near-exhaust': {
    asks: 'No wire of the job passes near the exhaust.',
    levels: ['stop'],
    ...commonPractice,
  },
  'covering-too-hot': {
    asks: 'A covering withstands the ambient of the zones that it passes.',
    levels: ['caution'],
    ...partData,
  },
  'cable-for-other-use': {
    asks: 'A cable of the job is made for what it carries there.',
    levels: ['caution'],
    ...partData,
  },
  'insulation-unmarked': {
    asks: 'Cable that bears no temperature counts as {insulation-unmarked}, and that is told.',
    levels: ['note'],
    ...commonPractice,
  },
  'colour-misleads': {
    asks: 'The insulation of a wire tells what it carries: no red ground, no black or brown feed, and nothing in yellow, orange or green and yellow.',
    levels: ['caution'],
    ...commonPractice,
  },
  'pair-colours-wrong': {
    asks: 'Of the two conductors of a pair to a speaker, or at speaker level, the striped one is minus, and they differ.',
    levels: ['caution'],
    ...commonPractice,
  },
  'pairs-alike': {
    asks: 'Pairs of one use that end at one device differ in colour as far as the shelf has colours.',
    levels: ['note'],
    ...commonPractice,
  },
  'reel-for-other-use': {
    asks: 'A wire is cut from a reel that is for what it carries.',
    levels: ['note'],
    ...partData,
  },
  'label-twice': {
    asks: 'No two wires of a job bear one label; what a released revision labelled stays.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'label-is-terminal': {
    asks: 'No label of a wire equals the name of a terminal of the job; what a released revision labelled stays.',
    levels: ['caution', 'note'],
    ...commonPractice,
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;
