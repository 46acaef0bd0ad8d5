/**
 * Insulations by the letters of IEC 60757: the colour on screen and in colour print, and a pattern along the conductor by
 * which it is known in black and white. The letters themselves stand in the tag of every end.
 */

export interface Insulation {
  readonly name: string;
  readonly colour: string;
  /** Strokes along the middle of the conductor and the gaps between them, millimetres of paper; none: plain; one alone: a line without gaps. */
  readonly pattern: readonly number[];
  /** The ink of these strokes: black on light insulation, white on dark. */
  readonly ink: '#000' | '#fff';
}

function insulation(
  name: string,
  colour: string,
  pattern: readonly number[],
  ink: Insulation['ink'],
): Insulation {
  return { name, colour, pattern, ink };
}

const [dot, gap, space] = [0.4, 0.5, 3] as const;

/** Every letter code of IEC 60757 that a wire may have. */
export const insulations = {
  BK: insulation('black', '#111', [], '#fff'),
  BN: insulation('brown', '#7b4a21', [dot, gap, dot, space], '#fff'),
  RD: insulation('red', '#c9211e', [dot, space], '#fff'),
  OG: insulation('orange', '#ee7f1a', [dot, gap, dot, gap, dot, space], '#000'),
  YE: insulation('yellow', '#f3cd1c', [1, space], '#000'),
  GN: insulation('green', '#1c8a3d', [2, space], '#fff'),
  BU: insulation('blue', '#1f5fbf', [1.4, gap, dot, space], '#fff'),
  VT: insulation('violet', '#7f3fa3', [1.4, gap, dot, gap, dot, space], '#fff'),
  GY: insulation('grey', '#8c8c8c', [dot, 1.2], '#000'),
  WH: insulation('white', '#fff', [], '#000'),
  PK: insulation('pink', '#f0a3b8', [0.9, gap, 0.9, space], '#000'),
  TQ: insulation('turquoise', '#2fb5ac', [dot, gap, 1.4, gap, dot, space], '#000'),
  CLR: insulation('clear', '#eee', [dot, 6], '#000'),
} as const satisfies Record<string, Insulation>;

/** What a cable looks like whose conductors lie inside its sheath, or a wire whose colour nobody wrote down. */
export const sheath: Insulation = insulation('cable, or colour not stated', '#ddd', [1], '#000');

/** The insulation of a conductor and of its stripe, by letters such as `WH/BK`. */
export function insulationOf(letters: string | null): {
  readonly base: Insulation;
  readonly stripe: Insulation | null;
} {
  const [base = '', stripe = ''] = (letters ?? '').split('/');
  return { base: byLetters(base) ?? sheath, stripe: byLetters(stripe) };
}

function byLetters(letters: string): Insulation | null {
  const known: Readonly<Record<string, Insulation>> = insulations;
  return known[letters] ?? null;
}

/** `BK black`, `WH/BK white, black stripe`; of what has no letters, what it is. */
export function insulationWords(letters: string | null): string {
  const { base, stripe } = insulationOf(letters);
  if (letters === null || base === sheath) return sheath.name;
  return stripe === null ? `${letters} ${base.name}` : `${letters} ${base.name}, ${stripe.name} stripe`;
}
