import type { PartPromise } from '../model/content/promised.ts';
import type { Shop, Stock } from '../model/content/shop.ts';

/** Lengths that differ by less are the same: no tape tells a hundredth of a millimetre (m). */
export const sameLengthM = 1e-5;

/** A length on the shelf: what is left on a reel, or an off-cut of one. */
export interface ShelfLength {
  /** The name that is written on an off-cut; null for a reel. */
  readonly offCut: string | null;
  /** What may be cut from it. */
  readonly freeM: number;
  /** What of it is promised to others beside that. */
  readonly promisedM: number;
}

/** The lengths of a part that lie on the shelf, its off-cuts first. None where it is counted by the piece. */
export function shelfLengths(
  stock: Stock | undefined,
  promise?: Pick<PartPromise, 'reelsM' | 'offCutsM'>,
): readonly ShelfLength[] {
  if (!stock || !('reels' in stock)) return [];
  const offCuts = Object.entries(stock['off-cuts']).map(([offCut, freeM]): ShelfLength => {
    return { offCut, freeM, promisedM: promise?.offCutsM[offCut] ?? 0 };
  });
  const reels = stock.reels.map((freeM, at): ShelfLength => {
    return { offCut: null, freeM, promisedM: promise?.reelsM[at] ?? 0 };
  });
  return [...offCuts, ...reels];
}

/** The longest length on the shelf (m): two ends of 8 ft are not 14 ft. */
export function longestLengthM(stock: Stock | undefined): number {
  return Math.max(0, ...shelfLengths(stock).map(({ freeM }) => freeM));
}

/** What of a promise lies on the shelf: pieces, of a sheet whole ones, or metres. */
export function promisedThere({ unit, pieces, reelsM, offCutsM }: PartPromise): number {
  if (unit === 'piece') return pieces;
  return [...reelsM, ...Object.values(offCutsM)].reduce((sum, lengthM) => sum + lengthM, 0);
}

/** Pieces on the shelf. */
export function piecesOf(stock: Stock | undefined): number {
  return stock && 'pieces' in stock ? stock.pieces : 0;
}

/** The order of parts by their ids in which those that have a piece on the shelf go first. */
export function shelvedFirst({ stock }: Pick<Shop, 'stock'>): (a: string, b: string) => number {
  const isShelved = (id: string): number => Number(piecesOf(stock[id]) > 0);
  return (a, b) => isShelved(b) - isShelved(a);
}

/** How what stands under `stock:` is told: as there only where somebody counted it. */
export function stockWord(shop: Pick<Shop, 'stock-counted'>): string {
  return shop['stock-counted'] ? 'in stock' : 'by the shop file, not counted';
}
