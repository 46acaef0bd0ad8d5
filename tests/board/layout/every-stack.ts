import type { LayoutRules } from '../../../lib/board/layout/check-placements.ts';
import { type Item, type Placement, turnedSize, turns } from '../../../lib/board/layout/item.ts';
import { type PlacedItem, place } from '../../../lib/board/layout/placed.ts';
import type { Link } from '../../../lib/board/layout/score/links.ts';
import { scoreLayout } from '../../../lib/board/layout/score/score-ledger.ts';
import { boxOf } from '../../../lib/board/shape/point.ts';
import type { shapeOf } from '../shapes.ts';
import { scoreBoard, searchHouse } from '../usual-board.ts';

/** The least number of raised items for which a layout is lawful, and the least score of such layouts. */
export interface LeastStack {
  readonly raised: number;
  readonly total: number;
  readonly layouts: number;
}

interface EveryStack {
  readonly stepM: number;
  readonly rules: LayoutRules;
  /** The score is not looked at: what raises as many as the best so far is passed over. */
  readonly countOnly?: boolean;
}

interface Way {
  readonly at: Placement;
  readonly placed: PlacedItem;
}

/**
 * Every way to place items on a lattice at the heights that each may have, tried one after the other; null where none
 * is lawful. Two items that break something together break it in every layout.
 */
export function leastStack(
  shape: ReturnType<typeof shapeOf>,
  items: readonly Item[],
  heightsM: Readonly<Record<string, readonly number[]>>,
  links: readonly Link[],
  { stepM, rules, countOnly = false }: EveryStack,
): LeastStack | null {
  const box = boxOf(shape.outline);
  const board = scoreBoard(shape);
  const judged = { ...rules, house: searchHouse };
  const waysOf = (item: Item): Way[] =>
    [0, ...(heightsM[item.id] ?? [])].flatMap((heightM) =>
      turns.flatMap((turnDeg) => {
        const size = turnedSize(item, turnDeg);
        const ways: Way[] = [];
        for (let x = 0; box.minX + x * stepM + size.xM <= box.maxX + 1e-9; x += 1)
          for (let y = 0; box.minY + y * stepM + size.yM <= box.maxY + 1e-9; y += 1) {
            const corner = { xM: box.minX + x * stepM, yM: box.minY + y * stepM };
            const at = { item: item.id, ...corner, turnDeg, heightM };
            ways.push({ at, placed: place(item, at, rules.partGapM) });
          }
        return ways;
      }),
    );
  const ways = items.map(waysOf);
  let best: LeastStack | null = null;
  const offer = (stack: readonly Way[]) => {
    const { total, broken } = scoreLayout(
      board,
      stack.map(({ placed }) => placed),
      links,
      judged,
    );
    if (broken > 1e-9) return;
    const raised = stack.filter(({ at }) => at.heightM > 0).length;
    if (best && (raised > best.raised || (raised === best.raised && total >= best.total))) return;
    best = { raised, total, layouts: (best?.layouts ?? 0) + 1 };
  };
  const extend = (stack: readonly Way[]) => {
    const raised = stack.filter(({ at }) => at.heightM > 0).length;
    if (countOnly && best && raised >= best.raised) return;
    const next = ways[stack.length];
    if (!next) {
      offer(stack);
      return;
    }
    for (const way of next) {
      const breaks = stack.some(
        (other) => scoreLayout(board, [other.placed, way.placed], [], judged).broken > 1e-9,
      );
      if (!breaks) extend([...stack, way]);
    }
  };
  extend([]);
  return best;
}
