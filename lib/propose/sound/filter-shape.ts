import type { FilterOffer } from '../../audio/filter/filter-offers.ts';
import type { FilterText } from '../../model/content/filter.ts';
import { writeQuantity } from '../../model/quantity/quantity.ts';

/**
 * The shape of a filter that is offered: Linkwitz-Riley where two groups meet, so that they add up level, Butterworth
 * where nothing meets; 24 dB, else the nearest below it, even ones first: common practice.
 */
export function shapeOf({ orders, types }: FilterOffer, meets: boolean): Pick<FilterText, 'type' | 'order'> {
  const below = orders.filter((one) => one < 4).toSorted((a, b) => (a % 2) - (b % 2) || b - a);
  const order = orders.includes(4) ? 4 : (below[0] ?? Math.min(...orders));
  const wanted = meets && order % 2 === 0 ? 'linkwitz-riley' : 'butterworth';
  return { type: types.includes(wanted) ? wanted : (types[0] ?? wanted), order };
}

/** A corner as a job writes it: `80 Hz`, `3.5 kHz`. */
export function hertzText(hz: number): string {
  return hz >= 1000 ? `${Number((hz / 1000).toPrecision(12))} kHz` : writeQuantity(hz, 'frequency');
}
