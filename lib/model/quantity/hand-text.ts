import type { Units } from '../vocabulary.ts';
import { type DimensionName, dimensions, inch } from './dimensions.ts';
import { inchText } from './length-text.ts';
import { plainDigits } from './plain-digits.ts';
import { parseQuantity, writeQuantity } from './quantity.ts';

/** Written inches are whole, or end in sixteenths. */
const steps = 16;

/** A quantity (SI) as a hand writes it: in the unit that takes the fewest letters; a length in the units of the shop. */
export function handText(value: number, dimension: DimensionName, units: Units): string {
  if (dimension === 'length' && value !== 0) return lengthText(value, units);
  const table: Readonly<Record<string, number>> = dimensions[dimension].units;
  const ways = Object.entries(table).map(([unit, factor]) => `${twelveDigits(value / factor)} ${unit}`);
  const exact = ways.filter((way) => parseQuantity(way, dimension) === value);
  return exact.sort((a, b) => a.length - b.length)[0] ?? writeQuantity(value, dimension);
}

const twelveDigits = plainDigits(12);

/** Inches where they come out in sixteenths, otherwise millimetres. */
function lengthText(lengthM: number, units: Units): string {
  const count = (lengthM / inch) * steps;
  const isInch = units === 'inch' && count > 0 && Math.abs(count - Math.round(count)) < 1e-9;
  return isInch
    ? `${inchText(Math.round(count), steps)} in`
    : `${Number((lengthM * 1000).toPrecision(12))} mm`;
}
