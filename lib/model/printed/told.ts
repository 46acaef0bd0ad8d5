import { plainDigits } from '../quantity/plain-digits.ts';
import type { FigureName } from './figures.ts';
import { printedNumber, withoutNoughts } from './index.ts';

const unknown = 'an unknown number of';

/** A ratio or a count as a message prints it: four digits that count, no noughts at the end. */
export function figure(value: number): string {
  return Number.isFinite(value) ? withoutNoughts(printedNumber('plain', value)) : unknown;
}

/** A reading as it was taken: it has the digits of the meter that showed it, six at most. */
export const asRead = plainDigits(6);

/** A figure with its unit, rounded to its safe side and without noughts at the end: `12.6 V`. */
const told =
  (name: FigureName, unit: string) =>
  (value: number): string =>
    Number.isFinite(value) ? `${withoutNoughts(printedNumber(name, value))} ${unit}` : `${unknown} ${unit}`;

/** The same on the finer range of a meter, for what lies below a bound. */
const toldFinely =
  (name: FigureName, fine: FigureName, below: number, unit: string) =>
  (value: number): string =>
    told(Math.abs(value) < below ? fine : name, unit)(value);

/** A current that may flow: a rating, an ampacity, a limit. */
export const amps = toldFinely('current-allowed', 'small-current-allowed', 1, 'A');
/** A current that flows, is drawn or must be interrupted. */
export const ampsDrawn = toldFinely('current-carried', 'small-current-carried', 1, 'A');
export const volts = toldFinely('voltage', 'small-voltage', 2, 'V');
/** Volts that are lost on a way. */
export const voltsLost = told('voltage-lost', 'V');
/** Volts that may be lost, or stand somewhere, at most. */
export const voltsAllowed = toldFinely('voltage-at-most', 'small-voltage-at-most', 2, 'V');
/** Volts that reach a device, against the least that it works at. */
export const voltsLeft = toldFinely('voltage-left', 'small-voltage-left', 2, 'V');
/** A load that is seen. */
export const ohms = told('load', 'ohm');
/** What a reading of resistance stays below. */
export const ohmsBelow = told('resistance-to', 'ohm');
/** A load that must not be gone below. */
export const ohmsAtLeast = told('load-at-least', 'ohm');
export const watts = told('power', 'W');
/** Heat that must be carried off. */
export const wattsLost = told('heat', 'W');
export const hertz = told('frequency', 'Hz');
/** A first natural frequency, against the least that is asked for. */
export const modeHertz = told('first-mode', 'Hz');
export const celsius = told('ambient', 'C');
/** What may be borne. */
export const celsiusAllowed = told('temperature-stood', 'C');
export const decibels = told('loss', 'dB');
/** A level that stands at a frequency. */
export const levelDb = told('level', 'dB');
export const squareMm = told('cross-section', 'mm2');
/** A cross-section that is asked for at least, or that has to go in. */
export const squareMmAtLeast = told('cross-section-at-least', 'mm2');
/** What a board comes to sag. */
export const sagMm = told('sag', 'mm');
/** How many times its prediction a reading is. */
export const times = told('times', 'times');
/** What a joint may lose at most, in millivolts. */
export const millivoltsAllowed = told('loss-at-most', 'mV');
/** Loads in multiples of the earth's pull. */
export const gees = told('load-held', 'g');
export const kilograms = told('mass', 'kg');

/** A share (1 is all) that is held against the least of it, in per cent. */
export function percentKept(share: number): string {
  return told('share-kept', '%')(share * 100);
}

/** A share (1 is all) that is held against the most of it, in per cent. */
export function percent(share: number): string {
  return told('share-lost', '%')(share * 100);
}
