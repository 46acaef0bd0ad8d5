import { capHeightEm, fontFamilies, type TypeStyle } from '../draw/style.ts';
import type { TextMetrics } from '../draw/text-metrics.ts';
import { element, escaped } from './svg-markup.ts';

export interface FittedWords {
  readonly text: string;
  readonly xMm: number;
  /** Of the baseline. */
  readonly yMm: number;
  /** Height of a capital, where there is room enough. */
  readonly capMm: number;
  readonly roomMm: number;
  readonly type: TypeStyle;
  readonly align: 'start' | 'middle' | 'end';
}

/** Attributes of words that stand on lines: a rim of paper keeps them readable. */
export const haloed = {
  fill: '#000000',
  stroke: '#ffffff',
  'stroke-width': 1,
  'stroke-linejoin': 'round',
  'paint-order': 'stroke',
} as const;

/**
 * One line of text, narrowed to its room where it is too long. Its width is written into the file, measured in
 * the shipped type, so that it keeps to it also where the reader's machine has another one.
 */
export function fittedText(words: FittedWords, metrics: TextMetrics): string {
  const { text, xMm, yMm, capMm, roomMm, type, align } = words;
  if (text === '') return '';
  const naturalMm = (metrics.widthMm(text, type) * capMm) / type.capMm;
  return element(
    'text',
    {
      x: xMm,
      y: yMm,
      'font-family': fontFamilies[type.family],
      'font-size': capMm / capHeightEm,
      'font-weight': type.weight,
      textLength: Math.min(naturalMm, roomMm),
      lengthAdjust: 'spacingAndGlyphs',
      ...(align !== 'start' && { 'text-anchor': align }),
    },
    [escaped(text)],
  );
}
