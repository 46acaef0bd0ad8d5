import type { KeepClearKind } from '../model/plan/board.ts';
import type { ConductorRole } from '../model/vocabulary.ts';

/**
 * The visual language of every drawing, in one file. Millimetres of paper throughout.
 *
 * Line widths and types after ISO 128-2 (mem): widths in steps of root two, the lengths of dashes, gaps and
 * dots as multiples of the width d. Type sizes after ISO 3098-1 (mem): the size is the height of a capital.
 */

export const lineWidthsMm = { fine: 0.25, narrow: 0.35, wide: 0.5, heavy: 0.7 } as const;

/**
 * Colours are properties that the page may set for a light or a dark screen; on paper, and wherever no style
 * sheet is at hand, the fallback holds, and it is black on white.
 */
export const inks = {
  line: 'var(--draw-line, #000)',
  quiet: 'var(--draw-quiet, #000)',
  text: 'var(--draw-text, #000)',
  paper: 'var(--draw-paper, #fff)',
  draft: 'var(--draw-draft, #000)',
  /** What is there to find one's way by, and what other sheets show: pale, on paper too. */
  pale: 'var(--draw-pale, #8a8a8a)',
  ghost: 'var(--draw-ghost, #d4d4d4)',
  power: 'var(--draw-power, #000)',
  ground: 'var(--draw-ground, #000)',
  signal: 'var(--draw-signal, #000)',
  speaker: 'var(--draw-speaker, #000)',
  'turn-on': 'var(--draw-turn-on, #000)',
  control: 'var(--draw-control, #000)',
} as const;
export type Ink = keyof typeof inks;

/** Elements of a line after ISO 128-2 (mem), as multiples of the line's width: drawn, gap, drawn, gap ... */
const elements = {
  continuous: [],
  dashed: [12, 3],
  shortDashed: [6, 3],
  longDashDot: [24, 3, 0.5, 3],
  longDashTwoDots: [24, 3, 0.5, 3, 0.5, 3],
  dotted: [1, 2],
} as const satisfies Record<string, readonly number[]>;

export interface LineStyle {
  readonly widthMm: number;
  readonly elements: keyof typeof elements;
  readonly ink: Ink;
}

function line(width: keyof typeof lineWidthsMm, kind: keyof typeof elements, ink: Ink = 'line'): LineStyle {
  return { widthMm: lineWidthsMm[width], elements: kind, ink };
}

/** What each line of a drawing means. */
export const lines = {
  /** The edge that is cut, the frame of the sheet. */
  cut: line('heavy', 'continuous'),
  frame: line('heavy', 'continuous'),
  /** Edges that are seen; symbols. */
  seen: line('wide', 'continuous'),
  symbol: line('wide', 'continuous'),
  part: line('narrow', 'continuous'),
  /** Edges behind the face that is looked at. */
  hidden: line('narrow', 'dashed'),
  centre: line('fine', 'longDashDot'),
  /** Neighbouring things that are not built: vehicle, space, swing of a lid. */
  neighbour: line('fine', 'longDashTwoDots', 'quiet'),
  dimension: line('fine', 'continuous'),
  leader: line('fine', 'continuous'),
  /** A board, and the parts on it, beneath what a sheet is about. */
  pale: line('wide', 'continuous', 'pale'),
  paleItem: line('narrow', 'continuous', 'pale'),
  rule: line('fine', 'continuous'),
  hatch: line('fine', 'continuous', 'quiet'),
  /** How far room is kept clear. */
  clearLimit: line('fine', 'dashed', 'quiet'),
} as const satisfies Record<string, LineStyle>;

/** Dash lengths in millimetres of paper; empty for a continuous line. */
export function dashesMm(style: LineStyle): readonly number[] {
  return elements[style.elements].map((multiple) => Number((multiple * style.widthMm).toFixed(3)));
}

export interface RoleStyle {
  /** As the key of a sheet names it. */
  readonly name: string;
  readonly line: LineStyle;
  /** Width of a paper-coloured core that makes two thin lines of one wide one. */
  readonly coreMm?: number;
  /** Short strokes across the line: how far apart, and how long from tip to tip. */
  readonly ticks?: { readonly everyMm: number; readonly lengthMm: number };
}

/** Conductor roles, told apart in black and white by weight, dash, core and ticks. */
export const roleStyles = {
  power: { name: 'Power, positive', line: line('heavy', 'continuous', 'power') },
  ground: { name: 'Ground, negative', line: line('heavy', 'shortDashed', 'ground') },
  signal: {
    name: 'Signal, low level',
    line: line('narrow', 'continuous', 'signal'),
    ticks: { everyMm: 6, lengthMm: 1.8 },
  },
  speaker: {
    name: 'Speaker, pair',
    line: { widthMm: 1.3, elements: 'continuous', ink: 'speaker' },
    coreMm: 0.6,
  },
  'turn-on': { name: 'Turn-on', line: line('narrow', 'longDashDot', 'turn-on') },
  control: { name: 'Control line', line: line('wide', 'dotted', 'control') },
} as const satisfies Record<ConductorRole, RoleStyle>;

/** Hatches: angle of the strokes in degrees, how far apart, and whether a second set crosses them. */
export const hatches = {
  /** Material that is cut away. */
  cutaway: { anglesDeg: [45], pitchMm: 2 },
  /** Places that must stay free: tanks, lines, airbags. */
  keepOff: { anglesDeg: [45, 135], pitchMm: 2 },
  /** What a section cuts, and a thing beside it. */
  section: { anglesDeg: [45], pitchMm: 1.2 },
  sectionBeside: { anglesDeg: [135], pitchMm: 1.2 },
  power: { anglesDeg: [45], pitchMm: 1.2 },
  ground: { anglesDeg: [45, 135], pitchMm: 1.6 },
  signal: { anglesDeg: [90], pitchMm: 1.6 },
  speaker: { anglesDeg: [0], pitchMm: 1.6 },
  'turn-on': { anglesDeg: [135], pitchMm: 3 },
  control: { anglesDeg: [135], pitchMm: 1.2 },
} as const satisfies Record<string, { anglesDeg: readonly number[]; pitchMm: number }>;
export type HatchName = keyof typeof hatches;

/** How room that must stay clear is hatched: strokes one way or the other, in a line of its own. */
export interface KeepClearStyle {
  /** As the key of a sheet names it. */
  readonly name: string;
  /** Up to the right, or down to it. */
  readonly slope: 'up' | 'down';
  readonly line: LineStyle;
}

/** Rooms to keep clear, told apart in black and white by slope and dash. */
export const keepClearStyles = {
  air: { name: 'Air', slope: 'up', line: line('fine', 'continuous', 'quiet') },
  connector: { name: 'Connectors and bends', slope: 'down', line: line('fine', 'continuous', 'quiet') },
  control: { name: 'Control access', slope: 'up', line: line('fine', 'shortDashed', 'quiet') },
  tool: { name: 'Tool room', slope: 'down', line: line('fine', 'dotted', 'quiet') },
} as const satisfies Record<KeepClearKind, KeepClearStyle>;

/** From stroke to stroke of such a hatch, square across. */
export const keepClearPitchMm = 2.4;

export const fontFamilies = {
  sans: "'IBM Plex Sans', sans-serif",
  condensed: "'IBM Plex Sans Condensed', 'IBM Plex Sans', sans-serif",
} as const;
export type FontFamily = keyof typeof fontFamilies;

export const fontWeights = [400, 600] as const;
export type FontWeight = (typeof fontWeights)[number];

/** Height of a capital as a share of the type's em; the same in every cut that is shipped. */
export const capHeightEm = 0.698;

/** Sizes of ISO 3098-1 (mem) that are used; 1.8 mm is left out as too small for a bench: 2.5 mm is 10 pt. */
export const capHeightsMm = [2.5, 3.5, 5, 7] as const;

export interface TypeStyle {
  readonly family: FontFamily;
  readonly weight: FontWeight;
  readonly capMm: (typeof capHeightsMm)[number];
}

/** What each type on a drawing is for. */
export const types = {
  caption: { family: 'condensed', weight: 400, capMm: 2.5 },
  note: { family: 'condensed', weight: 400, capMm: 2.5 },
  dimension: { family: 'condensed', weight: 400, capMm: 2.5 },
  terminal: { family: 'condensed', weight: 600, capMm: 2.5 },
  item: { family: 'condensed', weight: 600, capMm: 3.5 },
  wireLabel: { family: 'condensed', weight: 600, capMm: 3.5 },
  field: { family: 'condensed', weight: 600, capMm: 3.5 },
  heading: { family: 'sans', weight: 600, capMm: 5 },
  mark: { family: 'sans', weight: 600, capMm: 7 },
  /** On a picture that is shown small on a phone. */
  pictureName: { family: 'condensed', weight: 600, capMm: 5 },
  pictureNote: { family: 'condensed', weight: 400, capMm: 3.5 },
} as const satisfies Record<string, TypeStyle>;

/** The type size (em) that gives capitals of the wanted height. */
export function emMm(type: TypeStyle): number {
  return Number((type.capMm / capHeightEm).toFixed(3));
}

export const spacing = {
  /** From any text to whatever is nearest. */
  clearMm: 0.8,
  /** From a text to the thing that it names. */
  labelGapMm: 1.2,
  /** Baseline to baseline, as a multiple of the capital height (ISO 3098-1 asks for 1.4 at least). */
  linePitch: 1.6,
  /** From an outline to its first row of dimensions, and between rows. */
  dimensionGapMm: 7,
  /** Between an edge and the extension line that starts there; how far it runs past the arrow. */
  extensionGapMm: 1,
  extensionPastMm: 2,
} as const;

/** Arrows and dots after ISO 129-1 (mem): a closed filled arrow of 15 degrees, an origin circle. */
export const arrow = { lengthMm: 3, widthMm: 0.8, originRadiusMm: 1.5, leaderDotMm: 0.5 } as const;

/** The module of a symbol: everything in it lies on half modules. */
export const symbolModuleMm = 2.5;
