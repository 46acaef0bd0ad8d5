import { emMm, fontFamilies, type Ink, inks, spacing, type TypeStyle } from '../line-styles.ts';
import { at, type PaperBox, type PaperPoint } from '../paper.ts';
import type { Parent } from '../pen.ts';
import type { Drawing } from '../surface.ts';
import type { TextMetrics } from './text-metrics.ts';

/** Which end of a text stands at its point. */
export type TextAlign = 'start' | 'middle' | 'end';

export interface Lettering {
  readonly type: TypeStyle;
  /** Which end of the text stands at the point. Default `start`. */
  readonly align?: TextAlign;
  /** Turned a quarter to the left, to be read from the right edge of the sheet. Default no. */
  readonly turned?: boolean;
  readonly ink?: Ink;
}

/** The room of a text whose baseline begins (or ends, or has its middle) at a point. */
export function textBox(
  metrics: TextMetrics,
  text: string,
  point: PaperPoint,
  { type, align = 'start', turned = false }: Lettering,
): PaperBox {
  const width = metrics.widthMm(text, type);
  const start = align === 'start' ? 0 : align === 'middle' ? -width / 2 : -width;
  const ascent = metrics.ascentMm(type);
  const descent = metrics.descentMm(type);
  const { xMm, yMm } = point;
  return turned
    ? { leftMm: xMm - ascent, rightMm: xMm + descent, topMm: yMm - start - width, bottomMm: yMm - start }
    : { leftMm: xMm + start, rightMm: xMm + start + width, topMm: yMm - ascent, bottomMm: yMm + descent };
}

/** Writes one line of text with its baseline at a point, and records the room that it takes. */
export function drawText(
  drawing: Drawing,
  parent: Parent,
  text: string,
  point: PaperPoint,
  lettering: Lettering,
): PaperBox {
  const { type, align = 'start', turned = false, ink = 'text' } = lettering;
  const box = textBox(drawing.metrics, text, point, lettering);
  if (text === '') return box;
  const words = parent.element('text').words(text);
  words.attr({
    x: point.xMm,
    y: point.yMm,
    'font-family': fontFamilies[type.family],
    'font-size': emMm(type),
    'font-weight': type.weight,
    fill: inks[ink],
    ...(align !== 'start' && { 'text-anchor': align }),
    ...(turned && { transform: `rotate(-90 ${point.xMm} ${point.yMm})` }),
  });
  drawing.texts.push({ text, box });
  return box;
}

/** The baseline that centres capitals of a type on a height. */
export function baselineFor(middleYMm: number, type: TypeStyle): number {
  return middleYMm + type.capMm / 2;
}

/** Writes lines one below the other; the first baseline at the point. */
export function drawLines(
  drawing: Drawing,
  parent: Parent,
  texts: readonly string[],
  point: PaperPoint,
  lettering: Lettering,
): void {
  texts.forEach((text, index) => {
    drawText(
      drawing,
      parent,
      text,
      at(point.xMm, point.yMm + index * linePitchMm(lettering.type)),
      lettering,
    );
  });
}

/** Baseline to baseline. */
export function linePitchMm(type: TypeStyle): number {
  return type.capMm * spacing.linePitch;
}

/** Breaks a text at its spaces into lines of a width; a single word may be wider than that. */
export function wrapText(metrics: TextMetrics, text: string, widthMm: number, type: TypeStyle): string[] {
  const broken: string[] = [];
  let current = '';
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (current !== '' && metrics.widthMm(longer, type) > widthMm) {
      broken.push(current);
      current = word;
    } else current = longer;
  }
  return current === '' ? broken : [...broken, current];
}

/** How a text was made to fit. */
export interface FittedText {
  readonly type: TypeStyle;
  readonly lines: readonly string[];
  /** False where it is too wide or too high even in the smallest type. */
  readonly fits: boolean;
}

/** The largest of the given types (largest first) in which a text fits a width and a height, on as few lines as may be. */
export function fitText(
  metrics: TextMetrics,
  text: string,
  room: { readonly widthMm: number; readonly heightMm: number },
  choices: readonly [TypeStyle, ...TypeStyle[]],
): FittedText {
  let last: FittedText = { type: choices[0], lines: [text], fits: false };
  for (const type of choices) {
    const broken = wrapText(metrics, text, room.widthMm, type);
    const high = type.capMm + (broken.length - 1) * linePitchMm(type) + metrics.descentMm(type);
    const fits = high <= room.heightMm && broken.every((each) => metrics.widthMm(each, type) <= room.widthMm);
    last = { type, lines: broken, fits };
    if (fits) return last;
  }
  return last;
}
