import { type Box, type Point, turn } from './point.ts';

/** A point that a board is to be fixed at, and the room from its middle to an edge: the least, and a good one. Metres. */
export interface PointUnder extends Point {
  readonly id: string;
  readonly leastM: number;
  readonly goodM: number;
}

/** A rectangle, and the points that lie in it with at least their room to its edges. */
export interface OverPoints {
  readonly box: Box;
  readonly points: readonly string[];
}

/** What the rectangle is to be. Metres. */
export interface RectangleWish {
  readonly leastWidthM: number;
  readonly leastHeightM: number;
  /** Its edges lie on a grid of this. */
  readonly stepM: number;
  readonly isFree: (box: Box) => boolean;
}

/** More points than this are not tried in all their choices. */
const mostPoints = 8;
const leastPoints = 3;
const hairM = 1e-9;

/**
 * The least free rectangle over as many points as one takes, three at least and not all in one line: each edge as far
 * out as leaves good room beside the points where that is free, at least their least room, then as wide and as high as is
 * asked for. Null where none is free.
 */
export function rectangleOverPoints(points: readonly PointUnder[], wish: RectangleWish): OverPoints | null {
  for (const chosen of choicesOf(points.slice(0, mostPoints))) {
    if (!spreadOut(chosen)) continue;
    const box = grownTo(boxAbout(chosen, 'leastM', wish.stepM), boxAbout(chosen, 'goodM', wish.stepM), wish);
    if (box) return { box, points: chosen.map(({ id }) => id) };
  }
  return null;
}

/** All choices of three points or more, the most first; of equally many in the order of the points. */
function choicesOf(points: readonly PointUnder[]): readonly (readonly PointUnder[])[] {
  const choices = Array.from({ length: 2 ** points.length }, (_, mask) =>
    points.filter((_one, at) => Math.floor(mask / 2 ** at) % 2 === 1),
  );
  return choices
    .filter(({ length }) => length >= leastPoints)
    .toSorted((one, other) => other.length - one.length);
}

/** True where three of the points stand in no line. */
export function spreadOut([first, ...others]: readonly Point[]): boolean {
  if (!first) return false;
  return others.some((one) => others.some((two) => Math.abs(turn(first, one, two)) > 1e-4));
}

function boxAbout(points: readonly PointUnder[], room: 'leastM' | 'goodM', stepM: number): Box {
  const down = (values: readonly number[]) => Math.floor(Math.min(...values) / stepM + hairM) * stepM;
  const up = (values: readonly number[]) => Math.ceil(Math.max(...values) / stepM - hairM) * stepM;
  return {
    minX: down(points.map((one) => one.xM - one[room])),
    minY: down(points.map((one) => one.yM - one[room])),
    maxX: up(points.map((one) => one.xM + one[room])),
    maxY: up(points.map((one) => one.yM + one[room])),
  };
}

/** A box with one edge a step further out; null where that is far enough. */
type Move = (box: Box) => Box | null;

/** The least box, each edge moved out step by step while that is free: to good room, then to the size that is asked for. */
function grownTo(least: Box, good: Box, wish: RectangleWish): Box | null {
  if (!wish.isFree(least)) return null;
  const moves: readonly Move[] = [
    (box) => (box.minX > good.minX + hairM ? { ...box, minX: box.minX - wish.stepM } : null),
    (box) => (box.minY > good.minY + hairM ? { ...box, minY: box.minY - wish.stepM } : null),
    (box) => (box.maxX < good.maxX - hairM ? { ...box, maxX: box.maxX + wish.stepM } : null),
    (box) => (box.maxY < good.maxY - hairM ? { ...box, maxY: box.maxY + wish.stepM } : null),
  ];
  const isNarrow = ({ minX, maxX }: Box) => maxX - minX < wish.leastWidthM - hairM;
  const isLow = ({ minY, maxY }: Box) => maxY - minY < wish.leastHeightM - hairM;
  const larger: readonly Move[] = [
    (box) => (isNarrow(box) ? { ...box, maxX: box.maxX + wish.stepM } : null),
    (box) => (isNarrow(box) ? { ...box, minX: box.minX - wish.stepM } : null),
    (box) => (isLow(box) ? { ...box, maxY: box.maxY + wish.stepM } : null),
    (box) => (isLow(box) ? { ...box, minY: box.minY - wish.stepM } : null),
  ];
  const box = moved(moved(least, moves, wish), larger, wish);
  return isNarrow(box) || isLow(box) ? null : box;
}

/** Each move made as often as it leads to a free box, in turn. */
function moved(from: Box, moves: readonly Move[], { isFree }: RectangleWish): Box {
  let box = from;
  for (let open = moves; open.length > 0; ) {
    const next: Move[] = [];
    for (const move of open) {
      const after = move(box);
      if (!after || !isFree(after)) continue;
      box = after;
      next.push(move);
    }
    open = next;
  }
  return box;
}
