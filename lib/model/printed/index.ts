import { wholeSteps } from '../quantity/safe-rounding.ts';
import { type FigureKind, type FigureName, figures } from './figures.ts';
import { type Instrument, instruments, stepOf } from './instrument.ts';

/** What is written where there is no value. */
export const noFigure = '—';

/** A figure with its unit as it is printed, rounded to its safe side and to the digits of what it is read on; a dash where there is none. */
export function printed(name: FigureName, value: number | null | undefined): string {
  const { unit }: FigureKind = figures[name];
  const digits = printedNumber(name, value);
  return unit === '' || digits === noFigure ? digits : `${digits} ${unit}`;
}

/** The same without its unit, which stands elsewhere. */
export function printedNumber(name: FigureName, value: number | null | undefined): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return noFigure;
  const kind: FigureKind = figures[name];
  const instrument: Instrument = instruments[kind.on];
  const text = stepsText(printedValue(name, value), stepOf(value, kind.on));
  return instrument.noughts ? text : withoutNoughts(text);
}

/** The value that is printed of a figure: for whoever reckons on with it, such as a table for a spreadsheet. */
export function printedValue(name: FigureName, value: number): number {
  const { on, direction }: FigureKind = figures[name];
  const step = stepOf(value, on);
  // Twelve digits, so that 3 x 0.1 is 0.3; nought added turns -0 into 0.
  return Number((wholeSteps(value / step, direction) * step).toPrecision(12)) + 0;
}

function stepsText(value: number, step: number): string {
  return value.toFixed(Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));
}

/** Without noughts at its end: `12.6` of `12.60`. */
export function withoutNoughts(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A tone or a corner: from 1,000 Hz on in kilohertz, where that tells it in full. */
export function printedTone(frequencyHz: number): string {
  const inKilohertz = frequencyHz >= 1000 && Math.abs(frequencyHz / 10 - Math.round(frequencyHz / 10)) < 1e-6;
  return inKilohertz ? printed('kilohertz', frequencyHz / 1000) : printed('frequency', frequencyHz);
}
