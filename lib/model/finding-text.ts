import type { Finding } from './finding.ts';
import type { FigureName } from './printed/figures.ts';
import { printedNumber } from './printed/index.ts';
import { dimensions, parseNumber } from './quantity/quantity.ts';

/** The value and the limit of a finding as every list prints them: as they are written where they are, else computed. */
export function findingFigures({ value, limit, unit, written }: Finding): {
  readonly value?: string;
  readonly limit?: string;
} {
  return {
    ...(value !== undefined && { value: written?.value ?? findingFigure(value, unit, limit) }),
    ...(limit !== undefined && { limit: written?.limit ?? findingFigure(limit, unit, value) }),
  };
}

/**
 * A value or a limit of a finding that no file states: four digits that count, and its unit; a length of a shop's size in
 * millimetres. Of a value and its limit each is rounded away from the other, `against`, so that none is told as nearer to
 * being kept than it is.
 */
export function findingFigure(
  value: number | string,
  unit = '',
  against: number | string | undefined = undefined,
): string {
  if (typeof value !== 'number') return `${value} ${unit}`.trimEnd();
  const kind = kindAgainst(value, against);
  return unit === 'm' && Math.abs(value) < mmUpToM
    ? `${printedNumber(kind, value * 1000)} mm`
    : `${printedNumber(kind, value)} ${unit}`.trimEnd();
}

/** From here on four digits of millimetres would no longer be whole ones. */
const mmUpToM = 10;

function kindAgainst(value: number, against: number | string | undefined): FigureName {
  if (typeof against !== 'number' || against === value) return 'plain';
  return value > against ? 'plain-above' : 'plain-below';
}

/** By whom, at which value against which limit and why a caution was accepted. */
export function acceptedText({ by, reason, value, limit }: NonNullable<Finding['accepted']>): string {
  return `accepted by ${by}${value === undefined ? '' : ` at ${value}`}${limit === undefined ? '' : `, limit ${limit}`}: ${reason}`;
}

/** A value that was written coarser than this share of it was not read off the list. */
const coarsest = 0.01;

/**
 * True where what was written is what a finding has: the same text, or the same number to the last digit that was
 * written, in whichever unit of its dimension, and never more than 1 % off.
 */
export function isFigure(
  written: string,
  value: number | string,
  unit = '',
  limit: number | string | undefined = undefined,
): boolean {
  const text = written.trim().replace(/\s+/g, ' ');
  if (text === findingFigure(value, unit, limit)) return true;
  const read = typeof value === 'number' ? readTerm(text) : null;
  const factor = read && factorOf(read.unit, unit);
  if (typeof value !== 'number' || !read || factor === null) return false;
  const off = Math.abs(value * factor - read.number);
  return off <= (read.step / 2) * (1 + 1e-9) && off <= Math.abs(value * factor) * coarsest;
}

interface Term {
  readonly number: number;
  /** The worth of its last digit, or of its fraction. */
  readonly step: number;
  readonly unit: string;
}

function readTerm(text: string): Term | null {
  const [, minus, digits = '', unit = ''] =
    /^(-)?(\d+[ -]\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?|\.\d+) ?(\D.*)?$/.exec(text) ?? [];
  const number = parseNumber(digits);
  if (number === null) return null;
  const [, under] = /\/(\d+)$/.exec(digits) ?? [];
  const [, decimals = ''] = /\.(\d+)$/.exec(digits) ?? [];
  const step = under === undefined ? 10 ** -decimals.length : 1 / Number(under);
  return { number: minus ? -number : number, step, unit };
}

/** From a finding's unit to another of the same dimension; null where they share none. A plain share is of 1. */
function factorOf(to: string, from: string): number | null {
  const [written, own] = [to === '' ? '1' : to, from === '' ? '1' : from];
  if (written === own) return 1;
  for (const { si, units } of Object.values(dimensions)) {
    const known: Readonly<Record<string, number>> = { ...units, [si]: 1 };
    const [perTo, perFrom] = [known[written], known[own]];
    if (perTo !== undefined && perFrom !== undefined) return perFrom / perTo;
  }
  return null;
}
