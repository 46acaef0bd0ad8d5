import type { LabourRate } from '../model/estimate/labour-rate.ts';
import { wholeUp } from '../model/quantity/safe-rounding.ts';
import type { Price } from '../model/shelf/price.ts';
import type { ShelfUnit } from '../model/vocabulary.ts';

/** Prices and rates have at most four decimals: they are reckoned in whole ten-thousandths. */
const partsOfAmount = 10_000;
/** Lengths in whole micrometres: a foot is 304,800 of them. */
const micrometresIn = { m: 1_000_000, ft: 304_800 } as const;
/** Minutes in whole thousandths. */
const partsOfMinute = 1000;
/** Shares, such as 8.875 %, in whole parts of ten thousand million. */
const partsOfShare = 10_000_000_000;

/** So much of a part: pieces, or metres. */
export interface Amount {
  readonly quantity: number;
  readonly unit: ShelfUnit;
}

/**
 * What so much of a part costs, in whole smallest units of the currency, rounded up; as much of what the price is for as
 * is taken, not whole reels or boxes. Null where the price is for a length and the part is counted, or the other way.
 *
 * @param decimals Decimals of the currency.
 */
export function partCostMinor(
  { quantity, unit }: Amount,
  { amount, per }: Price,
  decimals: number,
): number | null {
  if ((unit === 'piece') !== (per.unit === 'piece')) return null;
  const [taken, pricedFor] =
    per.unit === 'piece'
      ? [quantity, per.count]
      : [wholeUp(quantity * micrometresIn.m), per.count * micrometresIn[per.unit]];
  return quotientUp([Math.round(amount * partsOfAmount), taken, 10 ** decimals], [partsOfAmount, pricedFor]);
}

/** What work costs, in whole smallest units of the currency, rounded up. */
export function labourCostMinor(minutes: number, { amountPerHour }: LabourRate, decimals: number): number {
  return quotientUp(
    [Math.round(amountPerHour * partsOfAmount), wholeUp(minutes * partsOfMinute), 10 ** decimals],
    [partsOfAmount, partsOfMinute, 60],
  );
}

/** A share of an amount, in whole smallest units, rounded up. */
export function shareMinor(minor: number, share: number): number {
  return quotientUp([minor, wholeUp(share * partsOfShare)], [partsOfShare]);
}

/** A product of whole numbers over another, up to the next whole number: exact, however large they get on the way. */
function quotientUp(over: readonly number[], under: readonly number[]): number {
  const product = (factors: readonly number[]) => factors.reduce((all, one) => all * BigInt(one), 1n);
  const divisor = product(under);
  return Number((product(over) + divisor - 1n) / divisor);
}
