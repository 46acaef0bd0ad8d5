import { CheapestFirst } from '../board/route/queue.ts';
import type { Box, Point } from '../board/shape/point.ts';

/** Something asked of a place that costs work where it is not met. */
export interface Asked {
  /** How far the board would have to move at least for it to be met, metres; 0 or below where it is met. */
  readonly lackM: number;
  readonly minutes: number;
}

/** What a place lacks. */
export interface Lacks<A extends Asked = Asked> {
  /** How far the board would have to move at least to be in its space, clear of everything, metres; 0 or below where it is. */
  readonly outM: number;
  /** Worked out where it is looked at: far out of the space it does not matter. */
  readonly asked: () => readonly A[];
}

/** The place that costs least. */
export interface CheapestPlace<A extends Asked> {
  readonly at: Point;
  readonly minutes: number;
  /** What it lacks. */
  readonly lacking: readonly A[];
}

/** Cells of the lattice, metres: the largest, and the smallest that is still divided no further. */
const [rootM, leafM] = [0.512, 0.001];
/** No search looks at more places. */
const mostLooks = 1500;
const hairM = 1e-9;

interface Cell {
  readonly at: Point;
  readonly halfM: number;
  /** Nothing in it costs less (min). */
  readonly bound: number;
}

/**
 * The place that costs least of those where the board is in its space; null where there is none below `below` minutes.
 * Looked at are `first`, then the middles of a lattice that lies still, whatever the space is like, so that what was
 * found in a space is found in a larger one as well. A cell is left out where everything in it lacks what its middle
 * lacks by more than half its diagonal (branch and bound: what is asked changes by no more than the board is moved).
 *
 * @param range Where the datum of the board can be at all, metres.
 */
export function cheapestPlace<A extends Asked>(
  range: Box,
  first: readonly Point[],
  lacksAt: (at: Point) => Lacks<A>,
  below: number,
): CheapestPlace<A> | null {
  const found: CheapestPlace<A>[] = [];
  const least = (): number => found.at(-1)?.minutes ?? below;
  const look = (at: Point, byM: number): number => {
    const { outM, asked } = lacksAt(at);
    if (outM > byM) return Number.POSITIVE_INFINITY;
    const all = asked();
    const minutes = outM > hairM ? Number.POSITIVE_INFINITY : missed(all, hairM);
    if (minutes < least()) found.push({ at, minutes, lacking: all.filter(({ lackM }) => lackM > hairM) });
    return missed(all, byM);
  };
  for (const at of first) look(at, hairM);
  const cells = rootCells(range);
  // Of cells that may cost the same, the one that was made first is looked at first: it is no smaller.
  const open = new CheapestFirst();
  for (const at of cells.keys()) open.push(at, 0);
  for (let looks = 0; looks < mostLooks && least() > 0; looks += 1) {
    const cell = cells[open.pop() ?? -1];
    if (!cell || cell.bound >= least()) break;
    const bound = look(cell.at, cell.halfM * Math.SQRT2 + hairM);
    if (bound >= least() || cell.halfM * 2 <= leafM) continue;
    for (const part of quarters(cell, bound, range)) {
      open.push(cells.length, bound);
      cells.push(part);
    }
  }
  return found.at(-1) ?? null;
}

/** What is missed by more than a distance, in minutes. */
function missed(asked: readonly Asked[], byM: number): number {
  return asked.reduce((sum, { lackM, minutes }) => sum + (lackM > byM ? minutes : 0), 0);
}

/** The largest cells that a range lies in. */
function rootCells({ minX, minY, maxX, maxY }: Box): Cell[] {
  const first = (from: number): number => Math.floor(from / rootM);
  const cells: Cell[] = [];
  for (let row = first(minY); row * rootM <= maxY; row += 1)
    for (let column = first(minX); column * rootM <= maxX; column += 1)
      cells.push({ at: { xM: (column + 0.5) * rootM, yM: (row + 0.5) * rootM }, halfM: rootM / 2, bound: 0 });
  return cells;
}

/** The four cells that one is divided into, as far as a range reaches into them. */
function quarters({ at, halfM }: Cell, bound: number, range: Box): Cell[] {
  const half = halfM / 2;
  return [
    [1, 1],
    [-1, 1],
    [1, -1],
    [-1, -1],
  ].flatMap(([x = 0, y = 0]): Cell[] => {
    const middle = { xM: at.xM + x * half, yM: at.yM + y * half };
    const isOut =
      middle.xM + half < range.minX ||
      middle.xM - half > range.maxX ||
      middle.yM + half < range.minY ||
      middle.yM - half > range.maxY;
    return isOut ? [] : [{ at: middle, halfM: half, bound }];
  });
}
