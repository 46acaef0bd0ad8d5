import type { TextAlign } from '../draw/lettering/lettering.ts';
import type { TextMetrics } from '../draw/lettering/text-metrics.ts';
import type { TypeStyle } from '../draw/line-styles.ts';
import { element } from './svg-markup.ts';

export interface FittedWords {
  readonly text: string;
  readonly xMm: number;
  /** Of the baseline. */
  readonly yMm: number;
  /** Height of a capital, where there is room enough. */
  readonly capMm: number;
  readonly roomMm: number;
  readonly type: TypeStyle;
  readonly align: TextAlign;
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
 * One line of text as the outlines of its glyphs, narrowed to its room where it is too long: it looks the same
 * wherever it is opened, whichever type is installed. Filled by the group that it stands in.
 */
export function fittedText(words: FittedWords, metrics: TextMetrics): string {
  const { text, xMm, yMm, capMm, roomMm, type, align } = words;
  if (text === '') return '';
  const scale = capMm / type.capMm;
  const naturalMm = metrics.widthMm(text, type) * scale;
  const narrowed = Math.min(1, roomMm / naturalMm);
  const shares = { start: 0, middle: 0.5, end: 1 } as const;
  const leftMm = xMm - shares[align] * naturalMm * narrowed;
  const transform = `translate(${leftMm.toFixed(3)} ${yMm.toFixed(3)}) scale(${(scale * narrowed).toFixed(5)} ${scale.toFixed(5)})`;
  return element('path', { 'data-text': text, transform, d: metrics.outline(text, type) });
}
