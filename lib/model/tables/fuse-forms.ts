import type { Mark } from '../trace.ts';

/** The fuse forms of the trade, by id. */
export const fuseFormIds = [
  'micro-blade',
  'low-profile-mini-blade',
  'mini-blade',
  'standard-blade',
  'maxi-blade',
  'bolt-in-30mm',
  'small-bolt-in',
  'large-bolt-in',
  'bolt-in-51mm',
  'class-t',
] as const;
export type FuseFormId = (typeof fuseFormIds)[number];

/**
 * What the trade calls the forms, by what files call them (common practice, no source); SF30 and SF51 are the types of
 * ISO 8820-5 (from memory).
 */
export const fuseFormWords: Readonly<Record<string, FuseFormId>> = {
  micro: 'micro-blade',
  micro2: 'micro-blade',
  'low-profile-mini': 'low-profile-mini-blade',
  mini: 'mini-blade',
  ATC: 'standard-blade',
  ATO: 'standard-blade',
  maxi: 'maxi-blade',
  midi: 'bolt-in-30mm',
  SF30: 'bolt-in-30mm',
  'mini-ANL': 'small-bolt-in',
  ANL: 'large-bolt-in',
  mega: 'bolt-in-51mm',
  SF51: 'bolt-in-51mm',
};

/** How a fuse is built. */
export type FuseStyle = 'blade' | 'bolt-in';

/** What is commonly made in a form. A part's own data goes before all of it. */
export interface FuseForm {
  /** As it is printed. */
  readonly name: string;
  readonly standard: string;
  readonly standardMark?: Mark;
  /** Rated currents made, low to high (A). */
  readonly ratingsA: readonly number[];
  /** House rules set by it what a fuse drops. What it interrupts hangs on the form itself, never on its style. */
  readonly style: FuseStyle;
  /** Body, length by width by height (m), where published. */
  readonly bodyM?: readonly [lengthM: number, widthM: number, heightM: number];
}

const blade = { style: 'blade' } as const;
const boltIn = { style: 'bolt-in' } as const;

/**
 * Rated currents and bodies by form: ISO 8820-3 (blades), ISO 8820-5 (bolt-in 30 mm; 51 mm from memory), trade
 * practice for the small and large bolt-in forms, UL 248-15 from memory for Class T: the form that interrupts what a
 * lithium battery gives.
 */
export const fuseForms: Readonly<Record<FuseFormId, FuseForm>> = {
  'micro-blade': {
    name: 'micro blade (two-leg)',
    standard: 'ISO 8820-3',
    standardMark: 'mem',
    ratingsA: [5, 7.5, 10, 15, 20, 25, 30],
    ...blade,
  },
  'low-profile-mini-blade': {
    name: 'low-profile mini blade',
    standard: 'ISO 8820-3',
    standardMark: 'mem',
    ratingsA: [2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30],
    ...blade,
  },
  'mini-blade': {
    name: 'mini blade',
    standard: 'ISO 8820-3',
    ratingsA: [2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30],
    bodyM: [0.0109, 0.0036, 0.0163],
    ...blade,
  },
  'standard-blade': {
    name: 'standard blade',
    standard: 'ISO 8820-3',
    ratingsA: [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40],
    bodyM: [0.0191, 0.0051, 0.0185],
    ...blade,
  },
  'maxi-blade': {
    name: 'maxi blade',
    standard: 'ISO 8820-3',
    ratingsA: [20, 30, 40, 50, 60, 70, 80],
    bodyM: [0.0292, 0.0085, 0.0343],
    ...blade,
  },
  'bolt-in-30mm': {
    name: 'bolt-in, 30 mm',
    standard: 'ISO 8820-5',
    ratingsA: [30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200],
    ...boltIn,
  },
  'small-bolt-in': {
    name: 'small bolt-in',
    standard: 'common practice, no source',
    standardMark: 'cp',
    ratingsA: [30, 40, 50, 60, 80, 100, 125, 150],
    ...boltIn,
  },
  'large-bolt-in': {
    name: 'large bolt-in',
    standard: 'common practice, no source',
    standardMark: 'cp',
    ratingsA: [35, 50, 60, 80, 100, 125, 150, 175, 200, 225, 250, 275, 300, 350, 400, 500],
    ...boltIn,
  },
  'bolt-in-51mm': {
    name: 'bolt-in, 51 mm',
    standard: 'ISO 8820-5',
    standardMark: 'mem',
    ratingsA: [60, 80, 100, 125, 150, 175, 200, 250, 300, 350, 400, 450, 500],
    ...boltIn,
  },
  'class-t': {
    name: 'Class T',
    standard: 'UL 248-15',
    standardMark: 'mem',
    ratingsA: [30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400],
    ...boltIn,
  },
};

/** Body colours of mini and standard blades: ISO 8820-3, from memory and published charts. The number on the body governs. */
const bladeColours: readonly (readonly [ratingA: number, colour: string])[] = [
  [1, 'black'],
  [2, 'grey'],
  [3, 'violet'],
  [4, 'pink'],
  [5, 'tan'],
  [7.5, 'brown'],
  [10, 'red'],
  [15, 'blue'],
  [20, 'yellow'],
  [25, 'clear'],
  [30, 'green'],
  [35, 'blue-green'],
  [40, 'orange'],
];

/**
 * The body colour of a mini or standard blade fuse, as a cross-check only; null for other forms, for which none is
 * published or another series holds.
 */
export function bladeColour(form: FuseFormId, ratingA: number): string | null {
  if (form !== 'mini-blade' && form !== 'standard-blade') return null;
  return bladeColours.find(([rating]) => rating === ratingA)?.[1] ?? null;
}
