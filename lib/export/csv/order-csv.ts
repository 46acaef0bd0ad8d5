import type { Part } from '../../model/kinds/index.ts';
import { perText } from '../../model/shelf/price.ts';
import type { OrderLine } from '../../shelf/order-list.ts';
import { csvText } from './csv-text.ts';

const columns = [
  'part',
  'title',
  'kind',
  'quantity',
  'unit',
  'longest_in_one_m',
  'price',
  'per',
  'units',
  'cost',
  'currency',
  'for_jobs',
] as const;

/** The order list of a shop as CSV: what it lacks for its jobs, with its own prices. It is for the shop alone. */
export function orderCsv(
  lines: readonly OrderLine[],
  parts: Readonly<Record<string, Part>>,
  currency: string | undefined,
): string {
  const rows = lines.map(({ part, quantity, unit, longestM, price, units, cents, to }) => [
    part,
    parts[part]?.title ?? null,
    parts[part]?.kind ?? null,
    unit === 'm' ? upTo(quantity) : quantity,
    unit,
    longestM === null ? null : upTo(longestM),
    price?.amount ?? null,
    price ? perText(price.per) : null,
    units,
    cents === null ? null : moneyText(cents),
    price ? (currency ?? null) : null,
    to.map(({ job, revision }) => `${job} ${revision}`).join('; '),
  ]);
  return csvText([columns, ...rows]);
}

/** A length to order (m), up to the next millimetre. */
function upTo(lengthM: number): number {
  return Math.ceil(lengthM * 1000 - 1e-3) / 1000;
}

/** Hundredths as a sum of money: `12.50`. */
export function moneyText(cents: number): string {
  return `${Math.floor(cents / 100)}.${String(cents % 100).padStart(2, '0')}`;
}
