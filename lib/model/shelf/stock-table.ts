/** Columns of a table of stock and prices: export writes them, import reads them. */
export const stockColumns = [
  'part',
  'kind',
  'pieces',
  'reels',
  'off-cuts',
  'price',
  'per',
  'currency',
] as const;
export type StockColumn = (typeof stockColumns)[number];

/** Columns that say anything of a part: of the others nothing follows alone. */
export const tellingColumns = [
  'pieces',
  'reels',
  'off-cuts',
  'price',
] as const satisfies readonly StockColumn[];

/** What stands in a cell for a list with nothing in it: an empty cell leaves what the shop file says. */
export const nothingThere = 'none';
