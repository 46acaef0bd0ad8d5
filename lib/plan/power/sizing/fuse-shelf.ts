import type { Shop, Stock } from '../../../model/content/shop.ts';
import { type HouseRules, houseRuleDefinition } from '../../../model/house-rules.ts';
import type { Part } from '../../../model/kinds/index.ts';
import type { FuseFormId } from '../../../model/tables/fuse-forms.ts';
import { type Traced, traced } from '../../../model/trace.ts';
import type { StockedFuse, StockedHolder } from '../../../power/fuse-choice.ts';

/** Pieces on the shelf. */
export function piecesOf(stock: Stock | undefined): number {
  return stock && 'pieces' in stock ? stock.pieces : 0;
}

/** Fault current (A) that a fuse of a form interrupts where its maker is silent: a house rule of that form. */
export function usualInterruptA(form: FuseFormId, rules: HouseRules): Traced<number> {
  const rule = `interrupt-${form}` as const;
  const { citation, mark } = houseRuleDefinition(rule);
  return traced(rules[rule].value, 'A', {
    origin: 'assumed',
    rule,
    citation,
    ...(mark && { mark }),
  });
}

/** The fuses and holders of the catalogue, with what is on the shelf of each. */
export function fuseShelf(
  parts: Readonly<Record<string, Part>>,
  shop: Shop,
  rules: HouseRules,
): { readonly fuses: readonly StockedFuse[]; readonly holders: readonly StockedHolder[] } {
  const fuses: StockedFuse[] = [];
  const holders: StockedHolder[] = [];
  for (const [id, part] of Object.entries(parts)) {
    const quantity = piecesOf(shop.stock[id]);
    if (part.kind === 'fuse') {
      const interruptA = part.interrupts ?? usualInterruptA(part.form, rules).value;
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
