import { formatLength } from '../model/length-text.ts';
import type { Job } from '../model/resolved-job.ts';

/** A number as a sheet prints it: four digits that count, no trailing zeros, never a power of ten. */
export function figure(value: number): string {
  if (!Number.isFinite(value)) return 'an unknown number of';
  if (Math.abs(value) >= 1000) return String(Math.round(value));
  const text = Number(value.toPrecision(4)).toFixed(12);
  return text.replace(/\.?0+$/, '').replace(/^-0$/, '0');
}

const measure = (unit: string) => (value: number) => `${figure(value)} ${unit}`;
export const amps = measure('A');
export const volts = measure('V');
export const ohms = measure('ohm');
export const watts = measure('W');
export const hertz = measure('Hz');
export const celsius = measure('C');
export const decibels = measure('dB');
export const squareMm = measure('mm2');
/** Loads in multiples of the earth's pull. */
export const gees = measure('g');

/** A share (1 is all) in per cent. */
export function percent(share: number): string {
  return `${figure(share * 100)} %`;
}

/** A length in both systems, the shop's own first: `13 5/8 in (346 mm)`. */
export function lengthIn(job: Job): (lengthM: number) => string {
  const { units, fraction } = job.shop;
  return (lengthM) => {
    if (!Number.isFinite(lengthM)) return 'an unknown length';
    // A sag or a web of a few millimetres would vanish in whole ones.
    const mmDecimals = Math.abs(lengthM) < 0.1 ? 1 : 0;
    const system = units === 'inch' ? 'inch' : 'mm';
    const text = formatLength(lengthM, { system, fraction, mmDecimals });
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
