import type { Shop } from '../../model/content/shop.ts';
import type { Part } from '../../model/kinds/index.ts';
import { writeQuantity } from '../../model/quantity/quantity.ts';
import { type CsvValue, csvText } from './csv-text.ts';

/** Titles of the columns of a stock table; import looks for the same. */
export const stockColumns = ['part', 'kind', 'pieces', 'reels'] as const;

/** What lies on the shelf as CSV, one part a row in the order of the shop file. The reels of a part stand in one field, parted by semicolons; off-cuts are left to the shop file. */
export function stockCsv({ stock }: Pick<Shop, 'stock'>, parts: Readonly<Record<string, Part>>): string {
  const rows = Object.entries(stock).map(([id, own]): CsvValue[] => {
    const kind = parts[id]?.kind ?? null;
    if ('pieces' in own) return [id, kind, own.pieces, null];
    return [id, kind, null, own.reels.map((lengthM) => writeQuantity(lengthM, 'length')).join('; ')];
  });
  return csvText([stockColumns, ...rows]);
}
