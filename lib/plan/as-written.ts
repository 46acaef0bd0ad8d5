import type { Job } from '../model/content/resolved-job.ts';
import { measuresAt } from '../model/content/written-measures.ts';
import type { LengthWriter } from '../model/phrase.ts';
import { printedLength } from '../model/printed/lengths.ts';
import { figure } from '../model/printed/told.ts';
import { type DimensionName, quantityIn } from '../model/quantity/quantity.ts';
import type { Whereabouts } from '../model/remark.ts';

/** A measure as a file has it. */
interface Measure {
  readonly text: string;
  /** In SI. */
  readonly value: number;
}

/** What of a job tells how its lengths are written. */
export type LengthsJob = Pick<Job, 'shop' | 'measures'>;

/** Every measure of a dimension that is written at some places or below them, in their order. */
function writtenMeasures(
  job: Pick<Job, 'measures'>,
  spots: readonly Whereabouts[],
  dimension: DimensionName,
): readonly Measure[] {
  return spots.flatMap((spot) =>
    measuresAt(job, spot).flatMap((written): Measure[] => {
      const text = written.text.trim().replace(/\s+/g, ' ');
      const value = quantityIn(text, dimension);
      return value === null ? [] : [{ text, value }];
    }),
  );
}

const isValue =
  (value: number) =>
  (one: Measure): boolean =>
    Math.abs(one.value - value) <= 1e-9 * Math.max(1, Math.abs(value));

/**
 * A length in both systems. One that stands at one of the places that a message is about is told as it was written
 * there, `10 ft (3048 mm)`; any other in the system of the first of them that has a length, else in the shop's.
 */
export const lengthIn =
  (job: LengthsJob, ...written: readonly Whereabouts[]): ((lengthM: number) => string) =>
  (lengthM) =>
    lengthsIn(job, ...written)('told', lengthM);

/** The same of a length that a remedy asks for at least: what is made to it must do. */
export const lengthAskedIn =
  (job: LengthsJob, ...written: readonly Whereabouts[]): ((lengthM: number) => string) =>
  (lengthM) =>
    lengthsIn(job, ...written)('room-asked', lengthM);

const inchM = 0.0254;

/** What a shop sets anew for itself is told as it stands there, too. */
const houseRules: Whereabouts = { path: '/rules', file: 'shop' };

const systemOf = ({ text }: Measure): 'inch' | 'mm' => (/m$/.test(text) ? 'mm' : 'inch');

/** The same of lengths of any kind, each rounded to its safe side. */
export function lengthsIn(job: LengthsJob, ...written: readonly Whereabouts[]): LengthWriter {
  return writerTo(0, job, written);
}

/**
 * What is free beside what is asked for, where it falls short: what is free never as more than it is, and both to a tenth of
 * a millimetre where they would read alike in whole ones.
 */
export function shortIn(
  job: LengthsJob,
  ...written: readonly Whereabouts[]
): (freeM: number, askedM: number) => readonly [free: string, asked: string] {
  const millimetres = (text: string) => /[\d.]+ mm/.exec(text)?.[0];
  return (freeM, askedM) => {
    const both = (mmDecimals: 0 | 1) => {
      const write = writerTo(mmDecimals, job, written);
      return [write('room-free', freeM), write('told', askedM)] as const;
    };
    const [free, asked] = both(0);
    return millimetres(free) === millimetres(asked) ? both(1) : [free, asked];
  };
}

/** Writes lengths to so many decimals of a millimetre; short ones to a tenth in any case. */
function writerTo(leastDecimals: 0 | 1, job: LengthsJob, written: readonly Whereabouts[]): LengthWriter {
  const { units, fraction } = job.shop;
  const there = writtenMeasures(job, written, 'length');
  const known = [...there, ...writtenMeasures(job, [houseRules], 'length')];
  const [first] = there;
  const usual = first ? systemOf(first) : units === 'inch' ? 'inch' : 'mm';
  return (kind, lengthM) => {
    if (!Number.isFinite(lengthM)) return 'an unknown length';
    const own = known.find(isValue(lengthM));
    const system = own ? systemOf(own) : usual;
    // A sag or a web of a few millimetres would vanish in whole ones.
    const mmDecimals = Math.abs(lengthM) < 0.1 ? 1 : leastDecimals;
    const printed = printedLength(kind, lengthM, { system, fraction, mmDecimals });
    const text = { ...printed, mm: printed.mm.replace(/\.0 mm$/, ' mm') };
    // A sag is finer than the tape, and a hair is no sixteenth.
    const isFiner = text.fraction === '0 in' || Math.abs(lengthM) < inchM / fraction / 2 - 1e-9;
    if (isFiner && lengthM !== 0) return own?.text ?? text.mm;
    return system === 'inch'
      ? `${own?.text ?? text.fraction} (${text.mm})`
      : `${own?.text ?? text.mm} (${text.fraction})`;
  };
}

/** A torque as it was written at one of the places that a message is about, newton metres beside it: `35 lbf in (3.954 N m)`. */
export function torqueIn(job: Job, ...written: readonly Whereabouts[]): (torqueNm: number) => string {
  const known = writtenMeasures(job, written, 'torque');
  return (torqueNm) => {
    const inNm = `${figure(torqueNm)} N m`;
    const own = known.find(isValue(torqueNm));
    return own && /^lbf/.test(own.text.replace(/^[\d ./-]+/, '')) ? `${own.text} (${inNm})` : inNm;
  };
}
