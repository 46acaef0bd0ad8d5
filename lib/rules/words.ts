import type { Job } from '../model/content/resolved-job.ts';
import { type LengthName, printedLength } from '../model/printed/lengths.ts';

export {
  amps,
  ampsDrawn,
  asRead,
  celsius,
  celsiusAllowed,
  decibels,
  figure,
  gees,
  hertz,
  kilograms,
  levelDb,
  modeHertz,
  ohms,
  ohmsAtLeast,
  percent,
  percentKept,
  squareMm,
  volts,
  voltsLost,
  watts,
  wattsLost,
} from '../model/printed/told.ts';

/** A length in both systems, the shop's own first: `13 5/8 in (346 mm)`. */
export const lengthIn = (job: Job): ((lengthM: number) => string) => lengthAs(job, 'told');

/** The same of a length that a remedy asks for at least: what is made to it must do. */
export const lengthAskedIn = (job: Job): ((lengthM: number) => string) => lengthAs(job, 'room-asked');

function lengthAs({ shop }: Job, name: LengthName): (lengthM: number) => string {
  const { units, fraction } = shop;
  return (lengthM) => {
    if (!Number.isFinite(lengthM)) return 'an unknown length';
    // A sag or a web of a few millimetres would vanish in whole ones.
    const mmDecimals = Math.abs(lengthM) < 0.1 ? 1 : 0;
    const system = units === 'inch' ? 'inch' : 'mm';
    const text = printedLength(name, lengthM, { system, fraction, mmDecimals });
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
