import { dimensionNote, dimensionText, formatLength, type LengthStyle } from '../model/length-text.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import { wholeDown, wholeUp } from '../model/safe-rounding.ts';

/** A value as a sheet writes it: what is read first, and what stands beside it in small type. */
export interface Written {
  readonly text: string;
  readonly beside?: string;
}

/** What is written where there is no value. */
export const none: Written = { text: '—' };

/** Writes the numbers of a plan in the shop's units. */
export interface Writer {
  /** A length on a board or a part as drawings have it, `13 5/8 in (13.625) [346]`: the note tells what stands in which brackets. */
  length(lengthM: number): Written;
  /** The same without its unit, which stands at the head of its column: `unit`. */
  bare(lengthM: number): Written;
  /** The unit that `bare` leaves out: `in` or `mm`. */
  readonly unit: string;
  /** The same with the other system alone beside it: for what is read off a rule. */
  short(lengthM: number): Written;
  /** The diameter of a drill: `1/8 in (3.2 mm)`, since bits are sold by the tenth of a millimetre. */
  bore(diameterM: number): string;
  /** A length of wire: feet and inches, and metres. */
  wire(lengthM: number): Written;
  /** What the forms of a length are, as the sheet's note says it. */
  readonly note: string;
}

/** The writer of a shop. */
export function writerFor(shop: Pick<BuildPlan['shop'], 'units' | 'fraction'>): Writer {
  const inches = shop.units === 'inch';
  const style: LengthStyle = { system: inches ? 'inch' : 'mm', fraction: shop.fraction };
  return {
    length: (lengthM) => {
      const { primary } = formatLength(lengthM, style);
      const [, beside] = / ([([].*)$/.exec(dimensionText(lengthM, style)) ?? [];
      return { text: primary, ...(beside !== undefined && { beside }) };
    },
    bare: (lengthM) => {
      const [text = '', ...beside] = dimensionText(lengthM, style).split(/ (?=[([])/);
      return { text, ...(beside.length > 0 && { beside: beside.join(' ') }) };
    },
    unit: inches ? 'in' : 'mm',
    bore: (diameterM) => {
      const { primary, mm, fraction } = formatLength(diameterM, { ...style, mmDecimals: 1 });
      return `${primary} (${inches ? mm : fraction})`;
    },
    short: (lengthM) => {
      const { primary, mm, fraction } = formatLength(lengthM, style);
      return { text: primary, beside: inches ? mm : fraction };
    },
    wire: (lengthM) => {
      const { primary, fraction } = formatLength(lengthM, { ...style, feet: true });
      const metres = measure(lengthM, 'm', 2);
      return inches ? { text: primary, beside: metres } : { text: metres, beside: fraction };
    },
    note: dimensionNote(style),
  };
}

/** A number with its unit, to so many decimals; never `-0`. */
export function measure(value: number, unit: string, decimals: number): string {
  return unit === '' ? decimal(value, decimals) : `${decimal(value, decimals)} ${unit}`;
}

/** The same, or a dash where there is no value. */
export function measureOr(value: number | null | undefined, unit: string, decimals: number): string {
  return value === null || value === undefined ? none.text : measure(value, unit, decimals);
}

/**
 * A current that may flow, such as a rating, an ampacity or what an alternator gives: to 0.1 A, rounded down, so that
 * 7.5 A is never told as 8 A; or a dash.
 */
export function mayFlow(currentA: number | null | undefined): string {
  return tenths(currentA, wholeDown);
}

/** A current that must be carried or is drawn: to 0.1 A, rounded up; or a dash. */
export function mustFlow(currentA: number | null | undefined): string {
  return tenths(currentA, wholeUp);
}

function tenths(currentA: number | null | undefined, rounded: (tenths: number) => number): string {
  if (currentA === null || currentA === undefined || !Number.isFinite(currentA)) return none.text;
  return `${rounded(currentA * 10) / 10 + 0} A`;
}

/** A length, or a dash. */
export function lengthOr(lengthM: number | null | undefined, write: (lengthM: number) => Written): Written {
  return lengthM === null || lengthM === undefined ? none : write(lengthM);
}

/** A whole number or one with as many digits as it needs, at most six: for values of no known precision. */
export function plainNumber(value: number): string {
  if (!Number.isFinite(value)) return none.text;
  return value.toLocaleString('en-US', { useGrouping: false, maximumSignificantDigits: 6 });
}

function decimal(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return none.text;
  return (Number(value.toFixed(decimals)) + 0).toFixed(decimals);
}
