/** A piece of a text; `whole` is one that may not be continued on the next line. */
export interface Piece {
  readonly text: string;
  readonly whole: boolean;
}

/** Numbers joined by hyphens: a standard and its part, a date, a range. */
const joined = /((?<![\p{L}\d])\d(?:[\d.,/]*\d)?(?:-\d(?:[\d.,/]*\d)?)+)/u;

/**
 * A text cut where numbers are joined by a hyphen, after which a browser would go on to the next line: `ISO 8820-` reads as
 * another standard than `ISO 8820-3`. Empty where there is none, as in nearly every text.
 */
export function hyphenedNumbers(text: string): readonly Piece[] {
  if (!joined.test(text)) return [];
  return text
    .split(joined)
    .map((piece, index) => ({ text: piece, whole: index % 2 === 1 }))
    .filter((piece) => piece.text !== '');
}
