import type { BuildPlan } from '../../model/plan/index.ts';
import { printedBit } from '../../model/printed/holes.ts';
import { noFigure } from '../../model/printed/index.ts';
import {
  type LengthName,
  printedDimension,
  printedLength,
  printedMetres,
} from '../../model/printed/lengths.ts';
import { dimensionNote, lengthStyle } from '../../model/quantity/length-text.ts';
import { plainDigits } from '../../model/quantity/plain-digits.ts';
import type { HoleFit } from '../../model/tables/drills.ts';

/** A value as a sheet writes it: what is read first, and what stands beside it in small type. */
export interface Written {
  readonly text: string;
  readonly beside?: string;
}

/** Both in one text: `13 5/8 in (346 mm)`. */
export function bothForms({ text, beside }: Written): string {
  return beside === undefined ? text : `${text} (${beside})`;
}

/** What is written where there is no value. */
export const none: Written = { text: noFigure };

/** Writes the lengths of a plan in the shop's units, each rounded to the side that is safe for its kind. */
export interface Writer {
  /** A length on a board or a part as drawings have it, `13 5/8 in (13.625) [346]`: the note tells what stands in which brackets. */
  length(name: LengthName, lengthM: number): Written;
  /** The same without its unit, which stands at the head of its column: `unit`. */
  bare(name: LengthName, lengthM: number): Written;
  /** The unit that `bare` leaves out: `in` or `mm`. */
  readonly unit: string;
  /** The same with the other system alone beside it: for what is read off a rule. */
  short(name: LengthName, lengthM: number): Written;
  /** The bits that do for a hole, the shop's own system first: `11/32 in or 8.5 mm`. */
  bore(diameterM: number, fit: HoleFit): string;
  /** A length of wire: feet and inches, and metres. */
  wire(name: LengthName, lengthM: number): Written;
  /** What the forms of a length are, as the sheet's note says it. */
  readonly note: string;
}

/** The writer of a shop. */
export function writerFor(shop: Pick<BuildPlan['shop'], 'units' | 'fraction'>): Writer {
  const style = lengthStyle(shop);
  const { system } = style;
  const inches = system === 'inch';
  return {
    length: (name, lengthM) => {
      const { primary } = printedLength(name, lengthM, style);
      const [, beside] = / ([([].*)$/.exec(printedDimension(name, lengthM, style)) ?? [];
      return { text: primary, ...(beside !== undefined && { beside }) };
    },
    bare: (name, lengthM) => {
      const [text = '', ...beside] = printedDimension(name, lengthM, style).split(/ (?=[([])/);
      return { text, ...(beside.length > 0 && { beside: beside.join(' ') }) };
    },
    unit: inches ? 'in' : 'mm',
    bore: (diameterM, fit) => printedBit(diameterM, fit, system),
    short: (name, lengthM) => {
      const { primary, mm, fraction } = printedLength(name, lengthM, style);
      return { text: primary, beside: inches ? mm : fraction };
    },
    wire: (name, lengthM) => {
      const { primary, fraction } = printedLength(name, lengthM, { ...style, feet: true });
      const metres = printedMetres(name, lengthM);
      return inches ? { text: primary, beside: metres } : { text: metres, beside: fraction };
    },
    note: dimensionNote(style),
  };
}

/** A length, or a dash. */
export function lengthOr(lengthM: number | null | undefined, write: (lengthM: number) => Written): Written {
  return lengthM === null || lengthM === undefined ? none : write(lengthM);
}

const sixDigits = plainDigits(6);

/** A whole number or one with as many digits as it needs, at most six: for workings, which are redone by hand. */
export function plainNumber(value: number): string {
  return Number.isFinite(value) ? sixDigits(value) : noFigure;
}

/** A value of a working in full, to so many decimals: it is redone by hand, not read on a meter; a dash where there is none. */
export function workingOr(value: number | null | undefined, unit: string, decimals: number): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return noFigure;
  const digits = (Number(value.toFixed(decimals)) + 0).toFixed(decimals);
  return unit === '' ? digits : `${digits} ${unit}`;
}
