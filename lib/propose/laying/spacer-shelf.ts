import type { StackPart } from '../../board/layout/raising/spacer-stack.ts';
import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import { piecesOf } from '../../shelf/shelf-lengths.ts';
import type { Around } from '../draft/around.ts';

/**
 * Spacers, bushes and washers of a thread, and packing of that thread or of none, as many as are left. What does not tell its
 * height (the length of a spacer or a bush, the thickness of the others) is no packing.
 */
export function spacerShelf(
  { parts, shop }: Pick<Around, 'parts' | 'shop'>,
  thread: string | undefined,
  taken: ReadonlyMap<string, number>,
): StackPart[] {
  return partsOfKind(parts, 'fixing').flatMap(([part, spec]): StackPart[] => {
    const { form } = spec;
    const thin = (form === 'washer' && !spec.serrated) || form === 'packing';
    const tall = form === 'spacer' || form === 'rubber-bush';
    const heightM = tall ? spec.length : thin ? spec.thickness : undefined;
    const quantity = piecesOf(shop.stock[part]) - (taken.get(part) ?? 0);
    const fits = spec.thread === undefined ? form === 'packing' : spec.thread === thread;
    if (heightM === undefined || !fits || quantity <= 0) return [];
    return [{ part, heightM, form: thin ? 'packing' : 'spacer', quantity }];
  });
}
