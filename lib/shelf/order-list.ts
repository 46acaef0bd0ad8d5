import type { PartPromisedTo, PromisedTo } from '../model/content/promised.ts';
import type { Shop } from '../model/content/shop.ts';
import type { Price } from '../model/shelf/price.ts';
import type { ShelfUnit } from '../model/vocabulary.ts';
import { cutLengths } from './cut-lengths.ts';
import { offeredStock } from './offered-stock.ts';
import { sameLengthM } from './shelf-lengths.ts';

/** One part to order. */
export interface OrderLine {
  readonly part: string;
  /** What the shelf lacks: pieces, or metres. */
  readonly quantity: number;
  readonly unit: ShelfUnit;
  /** The longest length that is needed in one (m); null for pieces. */
  readonly longestM: number | null;
  /** The jobs that take the part, those included that the shelf has enough for. */
  readonly to: readonly PartPromisedTo[];
  readonly price: Price | null;
  /** How many of what the price is for; null without a price, or where a length is longer than what is sold. */
  readonly units: number | null;
  /** What that costs, in hundredths of the currency, rounded up. */
  readonly cents: number | null;
}

const metresIn = { m: 1, ft: 0.3048 } as const;

/** What several jobs together take and the shelf lacks, with what it costs where the shop has a price for it. */
export function orderList(
  { stock, prices }: Pick<Shop, 'stock' | 'prices'>,
  jobs: readonly PromisedTo[],
): readonly OrderLine[] {
  const { promised } = offeredStock(stock, jobs);
  return Object.entries(promised).flatMap(([part, { unit, over, uncutM, to }]): OrderLine[] => {
    if (over <= 0) return [];
    const price = prices[part] ?? null;
    const units = price && unitsOf(price, { unit, over, uncutM });
    return [
      {
        ...{ part, quantity: over, unit, to, price, units },
        longestM: unit === 'm' ? Math.max(...uncutM) : null,
        cents: price && units !== null ? costCents(price, units) : null,
      },
    ];
  });
}

interface Lacking {
  readonly unit: ShelfUnit;
  readonly over: number;
  readonly uncutM: readonly number[];
}

/** How many of what a price is for cover what is lacking: whole ones. Null where they can't. */
function unitsOf({ per }: Price, { unit, over, uncutM }: Lacking): number | null {
  if (per.unit === 'piece') return unit === 'piece' ? Math.ceil(over / per.count) : null;
  if (unit === 'piece') return null;
  const soldM = per.count * metresIn[per.unit];
  // By the foot or the metre it comes in one length; by so many of them, in reels that no cut may be longer than.
  const least = Math.ceil((over - sameLengthM) / soldM);
  if (per.count === 1) return least;
  if (uncutM.some((cut) => cut > soldM + sameLengthM)) return null;
  for (let reels = Math.max(1, least); ; reels += 1) {
    const sold = Array.from({ length: reels }, () => ({ offCut: null, freeM: soldM }));
    if (cutLengths(sold, uncutM).uncut.length === 0) return reels;
  }
}

/** A price has at most four decimals: reckoned in whole ten-thousandths, so that no cent is lost or won. */
function costCents({ amount }: Price, units: number): number {
  return Math.ceil((Math.round(amount * 10_000) * units) / 100);
}
