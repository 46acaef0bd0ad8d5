import type { NestedPiece, NestedSheet } from '../../board/cut/nesting.ts';
import type { JobNesting } from '../../board/cut/sheet-pieces.ts';
import type { GrainWay } from '../../model/outline.ts';
import { printed } from '../../model/printed/index.ts';
import { type LengthName, printedLength } from '../../model/printed/lengths.ts';
import type { LengthStyle } from '../../model/quantity/length-text.ts';
import { linePitchMm } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { at, boxAt, heightMm, type PaperBox, type PaperPoint, widthMm } from '../paper.ts';
import { type ScaleRatio, scaleRatios } from '../sheet/scale.ts';
import { types } from '../style.ts';

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

/** Everything that is listed beside a stock sheet. */
export function listLines(scene: NestScene): string[] {
  return [...nestEntries(scene), ...offCutEntries(scene)].map(({ text }) => text);
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

/** Where a stock sheet and its list stand on paper. */
export interface NestLayout {
  readonly ratio: ScaleRatio;
  readonly sheet: PaperBox;
  /** The first baseline of the list. */
  readonly list: PaperPoint;
}

const gapMm = 6;
/** Distance of the list's lines. */
export const listPitchMm = linePitchMm(types.note) + 0.6;

/** The largest scale at which a stock sheet stands in a room with its list below or beside it; null where none does. */
export function nestLayout(scene: NestScene, room: PaperBox, metrics: TextMetrics): NestLayout | null {
  const lines = listLines(scene);
  const listMm = {
    wide: Math.max(0, ...lines.map((text) => metrics.widthMm(text, types.note))),
    high: lines.length * listPitchMm,
  };
  const { widthM, heightM } = scene.sheet.stock;
  for (const ratio of scaleRatios) {
    const [wide, high] = [(widthM * 1000) / ratio, (heightM * 1000) / ratio];
    if (wide + 2 * gapMm > widthMm(room) || high + 2 * gapMm > heightMm(room)) continue;
    const below =
      listMm.wide <= widthMm(room) - 2 * gapMm && high + listMm.high + 3 * gapMm <= heightMm(room);
    if (below) {
      const corner = middleCorner(room, Math.max(wide, listMm.wide), high + gapMm + listMm.high);
      const sheet = boxAt(corner.xMm, corner.yMm, wide, high);
      return { ratio, sheet, list: at(sheet.leftMm, sheet.bottomMm + gapMm) };
    }
    const beside = listMm.high <= heightMm(room) - gapMm && wide + listMm.wide + 3 * gapMm <= widthMm(room);
    if (beside) {
      const corner = middleCorner(room, wide + gapMm + listMm.wide, Math.max(high, listMm.high));
      const sheet = boxAt(corner.xMm, corner.yMm, wide, high);
      return { ratio, sheet, list: at(sheet.rightMm + gapMm, sheet.topMm + types.note.capMm) };
    }
  }
  return null;
}

/** The upper left corner of what stands in the middle of a room. */
function middleCorner(room: PaperBox, wideMm: number, highMm: number): PaperPoint {
  return at(room.leftMm + (widthMm(room) - wideMm) / 2, room.topMm + (heightMm(room) - highMm) / 2);
}

/** What is to be known before the saw is set: stock, cut, trim, how much is used, which way the grain runs. */
export function nestNotes({ nesting, sheet, style, grain }: NestScene): string[] {
  const { kerfM, trimM } = nesting.rules;
  const runs = { level: 'from left to right', upright: 'upwards' } as const;
  return [
    `Stock ${sizeText('length-left', sheet.stock, style)}; ${printed('share-used', sheet.used * 100)} used`,
    `Saw cut ${lengthText('made', kerfM, style)}, ${sheet.stock.offCut === undefined ? `edge ${lengthText('made', trimM, style)} not used` : 'used up to its edge'}`,
    'Dashed: off-cuts to keep',
    ...(grain ? [`Grain runs ${runs[grain]}`] : []),
  ];
}
