import type { Filter } from '../audio/filter/filter-response.ts';
import { greatestOrder } from '../audio/filter/low-pass-prototypes.ts';
import { quantityAbove } from '../model/fields.ts';
import { printed } from '../model/printed/index.ts';
import { type FilterPass, type FilterType, filterNames, filterTypeSchema } from '../model/vocabulary.ts';
import { choice, optional } from './field.ts';

/** What each order of a filter adds to its slope (dB per octave). */
const slopeDb = 6;

const orders = Array.from({ length: greatestOrder }, (_, k) => ({
  value: String(k + 1),
  title: `${k + 1}, ${printed('slope', slopeDb * (k + 1))}`,
}));
const types = filterTypeSchema.options.map((value) => ({ value, title: filterNames[value] }));

/** The entries of one filter; without a corner there is none. */
const passFields = (label: string, corner: string) => ({
  corner: optional(quantityAbove('frequency'), {
    label: `${label}: corner`,
    hint: 'Left empty: none.',
    initial: corner,
  }),
  type: choice(types, { label: `${label}: type`, initial: 'linkwitz-riley' }),
  order: choice(orders, { label: `${label}: order`, initial: '4' }),
});

/** The entries of a high-pass and a low-pass, which begin with these corners. */
export function bandFields(corners: { readonly high: string; readonly low: string }) {
  const high = passFields('High-pass', corners.high);
  const low = passFields('Low-pass', corners.low);
  return {
    highCorner: high.corner,
    highType: high.type,
    highOrder: high.order,
    lowCorner: low.corner,
    lowType: low.type,
    lowOrder: low.order,
  };
}

/** The values of `bandFields`. */
export interface BandEntries {
  readonly highCorner: number | null;
  readonly highType: FilterType;
  readonly highOrder: string;
  readonly lowCorner: number | null;
  readonly lowType: FilterType;
  readonly lowOrder: string;
}

/** The filters of a band, those that have a corner. */
export function filtersOf(band: BandEntries): Filter[] {
  const one = (pass: FilterPass, cornerHz: number | null, type: FilterType, order: string): Filter[] =>
    cornerHz === null ? [] : [{ pass, type, order: Number(order), cornerHz }];
  return [
    ...one('high-pass', band.highCorner, band.highType, band.highOrder),
    ...one('low-pass', band.lowCorner, band.lowType, band.lowOrder),
  ];
}
