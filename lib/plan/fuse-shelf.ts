import type { Part } from '../model/kinds/index.ts';
import type { Shop, Stock } from '../model/shop.ts';
import { fuseForms } from '../model/tables/fuse-forms.ts';
import type { StockedFuse, StockedHolder } from '../power/fuse-choice.ts';

/** Pieces on the shelf. */
export function piecesOf(stock: Stock | undefined): number {
  return stock && 'pieces' in stock ? stock.pieces : 0;
}

/** The fuses and holders of the catalogue, with what is on the shelf of each. */
export function fuseShelf(
  parts: Readonly<Record<string, Part>>,
  shop: Shop,
): { readonly fuses: readonly StockedFuse[]; readonly holders: readonly StockedHolder[] } {
  const fuses: StockedFuse[] = [];
  const holders: StockedHolder[] = [];
  for (const [id, part] of Object.entries(parts)) {
    const quantity = piecesOf(shop.stock[id]);
    if (part.kind === 'fuse') {
      const interruptA = part.interrupts ?? fuseForms[part.form].interruptA;
      fuses.push({ part: id, form: part.form, ratingA: part.rating, quantity, interruptA });
    }
    if (part.kind === 'fuse-holder')
      holders.push({
        part: id,
        form: part['fuse-form'],
        quantity,
        largestA: part.current,
        boardAreaM2: part.size.width * part.size.depth,
      });
  }
  return { fuses, holders };
}
