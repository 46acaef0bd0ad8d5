import { inch } from '../../model/quantity/dimensions.ts';
import { inchText } from '../../model/quantity/length-text.ts';
import { plainDigits } from '../../model/quantity/plain-digits.ts';
import { dimensions, parseQuantity, writeQuantity } from '../../model/quantity/quantity.ts';

/** The finest part of an inch that a tape has. */
const finestPart = 64;
const twelveDigits = plainDigits(12);

/**
 * A written length and so many times another one, as a text in the unit of the first: `2 3/4 in` and twice `7/16 in`
 * is `3 5/8 in`. Null where either is no length.
 */
export function steppedLength(from: string, step: string, times: number): string | null {
  const [startM, stepM] = [parseQuantity(from, 'length'), parseQuantity(step, 'length')];
  if (typeof startM !== 'number' || typeof stepM !== 'number') return null;
  // Twelve digits, as lengths are read: the sum of what a tape tells has fewer.
  const lengthM = Number((startM + times * stepM).toPrecision(12));
  const reads = (text: string) => parseQuantity(text, 'length') === lengthM;
  return waysToWrite(lengthM, from).find(reads) ?? writeQuantity(lengthM, 'length');
}

function waysToWrite(lengthM: number, like: string): readonly string[] {
  const parts = Math.round((lengthM / inch) * finestPart);
  const units: Readonly<Record<string, number>> = dimensions.length.units;
  const [, unit = ''] = /([^\d\s/.]+)\s*$/.exec(like) ?? [];
  const factor = Object.hasOwn(units, unit) ? units[unit] : undefined;
  const isInches = factor === inch || factor === 12 * inch;
  const sign = parts < 0 ? '-' : '';
  return [
    ...(isInches ? [`${sign}${inchText(Math.abs(parts), finestPart)} in`] : []),
    ...(factor === undefined ? [] : [`${twelveDigits(lengthM / factor)} ${unit}`]),
  ];
}
