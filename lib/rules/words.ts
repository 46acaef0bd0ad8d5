import type { FigureName } from '../model/printed/figures.ts';
import { printedNumber, withoutNoughts } from '../model/printed/index.ts';
import { printedLength } from '../model/printed/lengths.ts';
import type { Job } from '../model/resolved-job.ts';

const unknown = 'an unknown number of';

/** A ratio or a count as a message prints it: four digits that count, no noughts at the end. */
export function figure(value: number): string {
  return Number.isFinite(value) ? withoutNoughts(printedNumber('plain', value)) : unknown;
}

/** A reading as it was taken: it has the digits of the meter that showed it, six at most. */
export function asRead(value: number): string {
  return value.toLocaleString('en-US', { useGrouping: false, maximumSignificantDigits: 6 });
}

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
/** A load that is seen. */
export const ohms = told('load', 'ohm');
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

/** A length in both systems, the shop's own first: `13 5/8 in (346 mm)`. */
export function lengthIn(job: Job): (lengthM: number) => string {
  const { units, fraction } = job.shop;
  return (lengthM) => {
    if (!Number.isFinite(lengthM)) return 'an unknown length';
    // A sag or a web of a few millimetres would vanish in whole ones.
    const mmDecimals = Math.abs(lengthM) < 0.1 ? 1 : 0;
    const system = units === 'inch' ? 'inch' : 'mm';
    const text = printedLength('told', lengthM, { system, fraction, mmDecimals });
    // A sag is finer than the tape.
    if (text.fraction === '0 in' && lengthM !== 0) return text.mm;
    return system === 'inch' ? `${text.fraction} (${text.mm})` : `${text.mm} (${text.fraction})`;
  };
}

/** Names as one phrase: `a`, `a and b`, `a, b and c`. */
export function listed(names: readonly string[], last = 'and'): string {
  const [end = 'nothing', ...before] = names.toReversed();
  return before.length === 0 ? end : `${before.reverse().join(', ')} ${last} ${end}`;
}

/** A count with its noun: `1 wire`, `3 wires`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
