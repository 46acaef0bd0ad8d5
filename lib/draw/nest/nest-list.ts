import type { NestedPiece, NestedSheet } from '../../board/cut/nesting.ts';
import type { JobNesting } from '../../board/cut/sheet-pieces.ts';
import type { GrainWay } from '../../model/outline.ts';
import { type LengthName, printedLength } from '../../model/printed/lengths.ts';
import type { LengthStyle } from '../../model/quantity/length-text.ts';

/** One stock sheet of a nesting, and how lengths on it are written. */
export interface NestScene {
  readonly nesting: JobNesting;
  readonly sheet: NestedSheet;
  readonly style: LengthStyle;
  /** Which way the grain of the sheet runs as it is drawn; null for none. */
  readonly grain: GrainWay | null;
}

/** One line of the list below or beside a stock sheet. */
export interface NestEntry {
  readonly number: number;
  readonly id: string;
  readonly text: string;
  readonly pieces: readonly NestedPiece[];
}

/** The pieces on a stock sheet, those alike together, numbered in the order of their size. */
export function nestEntries({ nesting, sheet, style }: NestScene): NestEntry[] {
  const ids = nesting.pieces
    .map(({ id }) => id)
    .filter((id) => sheet.pieces.some((piece) => piece.id === id));
  return ids.map((id, index): NestEntry => {
    const pieces = sheet.pieces.filter((piece) => piece.id === id);
    const piece = nesting.pieces.find((one) => one.id === id);
    const size = piece ? sizeText('cut', piece, style) : '';
    return {
      number: index + 1,
      id,
      text: `${index + 1}: ${pieces.length} x ${piece?.title ?? id}, ${size}`,
      pieces,
    };
  });
}

/** The lines that tell what is kept of a stock sheet, the largest first: lettered, so that no number stands twice. */
export function offCutEntries({
  sheet,
  style,
}: NestScene): { readonly letter: string; readonly text: string }[] {
  return sheet.offCuts.map((offCut, nth) => {
    const letter = offCutLetter(nth);
    return { letter, text: `${letter}: off-cut to keep, ${sizeText('length-left', offCut, style)}` };
  });
}

/** The letter of what is left of a stock sheet, by its place in the list: A to Z, then A2 to Z2. */
export function offCutLetter(nth: number): string {
  const round = Math.floor(nth / 26) + 1;
  return `${String.fromCharCode(65 + (nth % 26))}${round === 1 ? '' : round}`;
}

/** Width by height of a thing, as the shop writes lengths. */
export function sizeText(
  name: LengthName,
  size: { readonly widthM: number; readonly heightM: number },
  style: LengthStyle,
): string {
  return `${lengthText(name, size.widthM, style)} x ${lengthText(name, size.heightM, style)}`;
}

/** A length as the shop writes it, with its unit. */
export function lengthText(name: LengthName, lengthM: number, style: LengthStyle): string {
  return printedLength(name, lengthM, style).primary;
}
