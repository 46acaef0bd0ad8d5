import type { Shop, Stock } from '../../model/content/shop.ts';
import type { Part } from '../../model/kinds/index.ts';
import { writeQuantity } from '../../model/quantity/quantity.ts';
import { type Price, perText } from '../../model/shelf/price.ts';
import { nothingThere, stockColumns } from '../../model/shelf/stock-table.ts';
import { type CsvValue, csvText } from './csv-text.ts';

type PricedStock = Pick<Shop, 'stock' | 'prices' | 'currency'>;

/**
 * What lies on the shelf and what is paid for it, as CSV: one part a row in the order of the shop file, those without stock
 * last. The reels of a part stand in one field, parted by semicolons, and so do its off-cuts.
 */
export function stockCsv(
  { stock, prices, currency }: PricedStock,
  parts: Readonly<Record<string, Part>>,
): string {
  const ids = [...new Set([...Object.keys(stock), ...Object.keys(prices)])];
  const rows = ids.map((id): CsvValue[] => [
    id,
    parts[id]?.kind ?? null,
    ...stockCells(stock[id]),
    ...priceCells(prices[id], currency),
  ]);
  return csvText([stockColumns, ...rows]);
}

function stockCells(stock: Stock | undefined): readonly CsvValue[] {
  if (!stock) return [null, null, null];
  if ('pieces' in stock) {
    const offCuts = Object.entries(stock['off-cuts']).map(
      ([name, { width, height, pieces }]) => `${name}: ${text(width)} x ${text(height)} x ${pieces}`,
    );
    return [stock.pieces, null, offCuts.length === 0 ? null : offCuts.join('; ')];
  }
  const offCuts = Object.entries(stock['off-cuts']).map(([name, lengthM]) => `${name}: ${text(lengthM)}`);
  return [null, list(stock.reels.map(text)), offCuts.length === 0 ? null : offCuts.join('; ')];
}

function priceCells(price: Price | undefined, currency: string | undefined): readonly CsvValue[] {
  return price ? [price.amount, perText(price.per), currency ?? null] : [null, null, null];
}

function text(lengthM: number): string {
  return writeQuantity(lengthM, 'length');
}

function list(texts: readonly string[]): string {
  return texts.length === 0 ? nothingThere : texts.join('; ');
}
