import { awgSizes } from '../tables/awg-sizes.ts';
import { type Dimension, type DimensionName, dimensionNames, dimensions } from './dimensions.ts';

const fraction = String.raw`(?:\d+(?:\s+|-))?\d+\/\d*[1-9]\d*`;
const amount = String.raw`(?:${fraction}|\d+(?:\.\d+)?|\.\d+)`;
/** Nought in each way in which an amount is written. */
const nought = String.raw`(?:(?:0+(?:\s+|-))?0+\/\d*[1-9]\d*|0+(?:\.0+)?|\.0+)`;

/** Which quantities a form is of: those that may lie below zero, or not; `minus` takes a sign in every dimension, `bare` in none. */
export type FormSign = 'signed' | 'unsigned' | 'minus' | 'bare';

/**
 * How quantities of a dimension are written, as a regular expression (ECMA-262, without look-around) for programs that
 * know no units: every text that `parseQuantity` reads, and of the others only those whose form is right and whose amount
 * is not, such as an improper fraction. `unsigned` leaves out what lies below zero.
 */
export function writtenForm(dimension: DimensionName, sign: FormSign = 'signed'): string {
  return String.raw`^\s*${quantityForm(dimension, sign)}\s*$`;
}

/** The same within a longer text, with nothing before and after it. */
export function quantityForm(name: DimensionName, sign: FormSign = 'signed'): string {
  const { signed }: Dimension = dimensions[name];
  const any = magnitude(name, amount, String.raw`\d+`);
  if (sign === 'minus') return String.raw`(?:-\s*)?(?:${signed ? String.raw`[-+]?\s*` : ''}${any})`;
  if (!signed || sign === 'bare') return any;
  if (sign === 'signed') return String.raw`(?:[-+]?\s*${any})`;
  // What is not below zero may have a minus where it is nought.
  return String.raw`(?:\+?\s*${any}|-\s*${magnitude(name, nought, '0+')})`;
}

/** A number with its unit; of a length also feet and inches. */
function magnitude(name: DimensionName, number: string, feet: string): string {
  const units = Object.keys(dimensions[name].units).map(unitForm).join('|');
  const term = String.raw`${number}\s*(?:${units})`;
  if (name !== 'length') return term;
  return String.raw`(?:${term}|${feet}\s*(?:ft|')\s*(?:-\s*)?${number}\s*(?:in|"))`;
}

function unitForm(unit: string): string {
  return unit.replace(/[\\^$.*+?()[\]{}|/]/g, String.raw`\$&`).replaceAll(' ', String.raw`\s+`);
}

/** How conductor sizes are written: the made sizes of AWG, or an area. */
export function wireSizeForm(): string {
  const awg = awgSizes.map((size) => size.replace('/', String.raw`\/`)).join('|');
  return String.raw`^\s*(?:(?:${awg}) ?AWG|\d+(?:\.\d+)? ?(?:mm2|mm²))\s*$`;
}

/** How readings of any dimension are written; a meter shows a minus in each of them. */
export function readingForm(): string {
  return String.raw`^\s*(?:${dimensionNames.map((name) => quantityForm(name, 'minus')).join('|')})\s*$`;
}
