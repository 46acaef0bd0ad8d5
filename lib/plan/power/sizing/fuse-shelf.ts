import { partsOfKind } from '../../../model/content/parts-of-kind.ts';
import type { Shop } from '../../../model/content/shop.ts';
import { type HouseRules, houseRuleDefinition } from '../../../model/house-rules.ts';
import type { Part } from '../../../model/kinds/index.ts';
import type { FuseFormId } from '../../../model/tables/fuse-forms.ts';
import { type Traced, traced } from '../../../model/trace.ts';
import type { StockedFuse, StockedHolder } from '../../../power/fuse-choice.ts';
import { piecesOf } from '../../../shelf/shelf-lengths.ts';

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
  const quantityOf = (id: string): number => piecesOf(shop.stock[id]);
  return {
    fuses: partsOfKind(parts, 'fuse').map(([part, { form, rating, interrupts }]) => ({
      part,
      form,
      ratingA: rating,
      quantity: quantityOf(part),
      interruptA: interrupts ?? usualInterruptA(form, rules).value,
    })),
    holders: partsOfKind(parts, 'fuse-holder').map(([part, spec]) => ({
      part,
      form: spec['fuse-form'],
      quantity: quantityOf(part),
      largestA: spec.current,
      boardAreaM2: spec.size.width * spec.size.depth,
    })),
  };
}
