import type { TextMetrics } from '../../draw/lettering/text-metrics.ts';
import { types } from '../../draw/line-styles.ts';
import { fittedText } from '../fitted-text.ts';
import { element } from '../svg-markup.ts';

/** Length of the bars: long enough that a ruler tells half a per cent, short enough for every page. */
export const barLengthMm = 100;
const inchBarMm = 101.6;

/**
 * Two bars to measure the print by, one lying at a point and one standing: 100 mm, and 4 in beside the lying one.
 * Printers may stretch one way only, so both are measured.
 */
export function lyingBars(xMm: number, yMm: number, metrics: TextMetrics): string {
  return element('g', { 'data-bar': 'lying', stroke: '#000000', 'stroke-width': 0.25 }, [
    bar(xMm, yMm, barLengthMm, [0, 20, 40, 60, 80, 100]),
    bar(xMm, yMm + 7, inchBarMm, [0, 25.4, 50.8, 76.2, 101.6]),
    words('100 mm', xMm + 104, yMm + 1, metrics),
    words('4 in', xMm + 104, yMm + 8, metrics),
  ]);
}

/** The standing bar, from its foot upwards. */
export function standingBar(xMm: number, footYMm: number, metrics: TextMetrics): string {
  const turned = `rotate(-90 ${xMm} ${footYMm})`;
  return element(
    'g',
    { 'data-bar': 'standing', stroke: '#000000', 'stroke-width': 0.25, transform: turned },
    [
      bar(xMm, footYMm, barLengthMm, [0, 20, 40, 60, 80, 100]),
      words('100 mm', xMm + 104, footYMm + 1, metrics),
    ],
  );
}

/** The length runs between the middles of the end strokes. */
function bar(xMm: number, yMm: number, lengthMm: number, ticks: readonly number[]): string {
  const strokes = ticks.map((tick) => {
    const reach = tick === 0 || tick === lengthMm ? 2.5 : 1.2;
    return `M${round(xMm + tick)} ${round(yMm - reach)}V${round(yMm + reach)}`;
  });
  return element('path', { d: `M${round(xMm)} ${round(yMm)}H${round(xMm + lengthMm)}${strokes.join('')}` });
}

function round(value: number): number {
  return Number(value.toFixed(3));
}

function words(text: string, xMm: number, yMm: number, metrics: TextMetrics): string {
  const line = fittedText(
    { text, xMm, yMm, capMm: 2.5, roomMm: 30, type: types.note, align: 'start' },
    metrics,
  );
  return element('g', { fill: '#000000', stroke: 'none' }, [line]);
}
