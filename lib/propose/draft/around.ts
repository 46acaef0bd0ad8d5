import type { Shop } from '../../model/content/shop.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { HouseRules } from '../../model/house-rules.ts';
import type { Part } from '../../model/kinds/index.ts';
import { shelfLengths } from '../../shelf/shelf-lengths.ts';

/** What a job is completed from beside its own file. */
export interface Around {
  readonly vehicle: Vehicle;
  readonly parts: Readonly<Record<string, Part>>;
  readonly rules: HouseRules;
  readonly shop: Shop;
}

/** Pieces of a part on the shelf, or reels and off-cuts of it with anything on them: what is there goes before what is not. */
export function onShelf({ shop }: Pick<Around, 'shop'>, part: string): number {
  const stock = shop.stock[part];
  if (!stock) return 0;
  return 'pieces' in stock ? stock.pieces : shelfLengths(stock).filter(({ freeM }) => freeM > 0).length;
}
