import { type BoardRemark, phrase } from '../remark.ts';
import type { BoardShape } from '../shape/outline.ts';
import { regionArea } from '../shape/region.ts';
import { type BoardLines, boardLinesOf } from './board-lines.ts';
import type { FixingHead } from './check-placements.ts';
import { type Body, bodyOf, type Item, type Placement } from './item.ts';
import { sitesOf } from './lattice.ts';
import { noRoom } from './layout-faults.ts';

/** Square inches and square centimetres are for a shop's units: areas are told in square centimetres. */
const perCm2 = 1e4;

const areaOf = (items: readonly Item[]): number =>
  items.reduce((sum, { widthM, depthM }) => sum + widthM * depthM, 0);

/**
 * What stands on a board against the board itself, before any place is searched for: footprints, their rooms left out,
 * can't have more area than the board. What the search may raise saves no more than the area of what may stand below it;
 * what the job raises saves its own where something is low enough for that. Null where they may have room.
 */
export function tooFull(
  board: string,
  { region }: Pick<BoardShape, 'region'>,
  items: readonly Item[],
  heightsM: Readonly<Record<string, number>> = {},
): BoardRemark<'board-too-small-for-parts'> | null {
  const standsOver = ({ id }: Item): boolean =>
    items.some((lower) => lower.id !== id && lower.heightM <= (heightsM[id] ?? 0));
  const flat = items.filter((item) => !standsOver(item));
  const uppers = flat.filter(({ raising }) => raising !== undefined);
  const lowers = flat.filter(({ beneath }) => beneath !== undefined);
  const askedM2 = areaOf(flat) - Math.min(areaOf(uppers), areaOf(lowers));
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

/** A board with what stands on it, before places are searched for. */
export interface RoomTask extends Omit<SpotTask, 'boardLines'> {
  /** Its id. */
  readonly board: string;
  readonly shape: BoardShape;
  readonly heads: readonly FixingHead[];
}

/** What is told before places are searched for: more parts than board, or a part that what is written leaves no spot. */
export function roomLacking({ board, shape, heads, ...task }: RoomTask): readonly BoardRemark[] {
  const full = tooFull(board, shape, task.items, task.heightsM);
  return full ? [full] : withoutSpot({ ...task, boardLines: boardLinesOf(shape, heads) });
}

/** What places are looked for on. */
export interface SpotTask {
  readonly boardLines: BoardLines;
  readonly items: readonly Item[];
  /** What is placed by hand. */
  readonly given: readonly Placement[];
  /** Height of the underside of open items over the board, metres. */
  readonly heightsM: Readonly<Record<string, number>>;
  readonly stepM: number;
}

/**
 * Open items for which what is placed by hand leaves no spot of the lattice that places are searched on, whatever the
 * other open ones do: told before any search, with how much is lacking where it is least. One that may be raised over
 * another, or that the board itself has no spot for, is left to the search.
 */
export function withoutSpot({ boardLines, items, given, heightsM, stepM }: SpotTask): BoardRemark[] {
  const placed = given.flatMap((at) => {
    const item = items.find(({ id }) => id === at.item);
    return item ? [{ id: item.id, body: bodyOf(item, at) }] : [];
  });
  return items.flatMap((item): BoardRemark[] => {
    const heightM = heightsM[item.id] ?? 0;
    const isOpen = !given.some((at) => at.item === item.id);
    const mayBeRaised = item.raising !== undefined && items.some(({ beneath }) => beneath !== undefined);
    if (!isOpen || mayBeRaised) return [];
    let least = { id: '', byM: Infinity };
    for (const site of sitesOf(boardLines, item, heightM, stepM).list) {
      const body = bodyOf(item, { item: item.id, ...site });
      let most = { id: '', byM: 0 };
      for (const one of placed) {
        const byM = overlapM(body, one.body);
        if (byM > most.byM) most = { id: one.id, byM };
      }
      if (most.byM <= 1e-9) return [];
      if (most.byM < least.byM) least = most;
    }
    return least.byM < Infinity ? [noRoom(item.id, least.byM, [least.id])] : [];
  });
}

/** How far two bodies stand in each other, the shorter way out on the board; 0 where they do not. */
function overlapM(a: Body, b: Body): number {
  if (a.minZ >= b.maxZ - 1e-9 || b.minZ >= a.maxZ - 1e-9) return 0;
  const xM = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
  const yM = Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY);
  return Math.max(0, Math.min(xM, yM));
}
