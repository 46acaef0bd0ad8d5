import { type BoardRemark, phrase } from '../remark.ts';
import type { BoardShape } from '../shape/outline.ts';
import { regionArea } from '../shape/region.ts';
import type { Item } from './item.ts';

/** Square inches and square centimetres are for a shop's units: areas are told in square centimetres. */
const perCm2 = 1e4;

/**
 * What stands on a board against the board itself, before any place is searched for: footprints that can't be raised over
 * others, their rooms left out, can't have more area than the board. Null where they may have room.
 */
export function tooFull(
  board: string,
  { region }: Pick<BoardShape, 'region'>,
  items: readonly Item[],
): BoardRemark<'board-too-small-for-parts'> | null {
  const flat = items.filter(({ raising }) => raising === undefined);
  const askedM2 = flat.reduce((sum, { widthM, depthM }) => sum + widthM * depthM, 0);
  const boardM2 = regionArea(region);
  if (askedM2 <= boardM2) return null;
  const [asked, has] = [askedM2 * perCm2, boardM2 * perCm2].map((cm2) => Math.round(cm2));
  return {
    rule: 'board-too-small-for-parts',
    level: 'stop',
    of: [board, ...flat.map(({ id }) => id)],
    message: phrase`what stands on ${board} covers ${asked ?? 0} cm2 without any room beside it, and the board has ${has ?? 0} cm2`,
    value: askedM2,
    limit: boardM2,
    unit: 'm2',
    remedy: 'make the board larger, put a part elsewhere, or write other parts than those proposed',
  };
}
