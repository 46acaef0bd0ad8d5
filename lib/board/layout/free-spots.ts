import { type Box, boxOf, distanceToBox, edgesOf, insideRing, type Point } from '../shape/point.ts';
import type { BoardLines } from './board-lines.ts';

/** The spots of a square lattice at which the lower left corner of a box may be. By `column * rows + row`. */
export interface FreeSpots {
  readonly columns: number;
  readonly rows: number;
  /** 1 where the box stands on board all over. */
  readonly free: Uint8Array;
}

/**
 * Where on a lattice, from the lower left corner of the board's box, a box of some size stands on board all over: inside
 * the outline and, unless it is raised, off openings and holes. Only spots near a line are held against it: from one
 * spot to the next, when no line runs through either, the box stays on the same side of all lines.
 */
export function freeSpots(boardLines: BoardLines, size: Point, stepM: number, raised: boolean): FreeSpots {
  const { box } = boardLines;
  const count = (spanM: number) => Math.max(0, Math.floor(spanM / stepM + 1e-9) + 1);
  const columns = count(box.maxX - box.minX - size.xM);
  const rows = count(box.maxY - box.minY - size.yM);
  const spots = { columns, rows, free: new Uint8Array(columns * rows).fill(1) };
  const lattice: Lattice = { box, stepM, size, spots };
  for (const [a, b] of raised ? edgesOf(boardLines.outer) : boardLines.edges)
    block(lattice, boxOf([a, b]), (at) => runsThrough(a, b, at));
  for (const hole of raised ? [] : boardLines.holes) {
    const radiusM = hole.diameterM / 2;
    const { xM, yM } = hole;
    const around = { minX: xM - radiusM, maxX: xM + radiusM, minY: yM - radiusM, maxY: yM + radiusM };
    block(lattice, around, (at) => distanceToBox(hole, at) < radiusM);
  }
  blockOutside(lattice, boardLines, raised);
  return spots;
}

/** Whether a box stands on board all over: inside the outline and, unless it is raised, off openings and holes. */
export function standsFree(boardLines: BoardLines, at: Box, raised: boolean): boolean {
  const { outer, openings, edges, holes } = boardLines;
  if ((raised ? edgesOf(outer) : edges).some(([a, b]) => runsThrough(a, b, at))) return false;
  const middle = { xM: (at.minX + at.maxX) / 2, yM: (at.minY + at.maxY) / 2 };
  if (!insideRing(middle, outer)) return false;
  if (raised) return true;
  if (openings.some((ring) => insideRing(middle, ring))) return false;
  return holes.every((hole) => distanceToBox(hole, at) >= hole.diameterM / 2);
}

interface Lattice {
  readonly box: Box;
  readonly stepM: number;
  readonly size: Point;
  readonly spots: FreeSpots;
}

function boxAt({ box, stepM, size }: Lattice, column: number, row: number): Box {
  const [minX, minY] = [box.minX + column * stepM, box.minY + row * stepM];
  return { minX, minY, maxX: minX + size.xM, maxY: minY + size.yM };
}

/** Takes away the spots whose box meets something, which lies inside a box of its own. */
function block(lattice: Lattice, around: Box, meets: (at: Box) => boolean): void {
  const { box, stepM, size, spots } = lattice;
  const first = (from: number, start: number) => Math.max(0, Math.floor((from - start) / stepM) - 1);
  const last = (to: number, start: number, most: number) =>
    Math.min(most - 1, Math.ceil((to - start) / stepM) + 1);
  const endColumn = last(around.maxX, box.minX, spots.columns);
  const endRow = last(around.maxY, box.minY, spots.rows);
  for (let column = first(around.minX - size.xM, box.minX); column <= endColumn; column += 1)
    for (let row = first(around.minY - size.yM, box.minY); row <= endRow; row += 1) {
      const spot = column * spots.rows + row;
      if (spots.free[spot] === 1 && meets(boxAt(lattice, column, row))) spots.free[spot] = 0;
    }
}

/** Takes away the spots whose middle is off the board, those on no line being left. */
function blockOutside(lattice: Lattice, { outer, openings }: BoardLines, raised: boolean): void {
  const { spots, stepM, size } = lattice;
  const { columns, rows, free } = spots;
  const off = raised ? [] : openings;
  const isInside = (column: number, row: number): boolean => {
    const at = boxAt(lattice, column, row);
    const middle = { xM: (at.minX + at.maxX) / 2, yM: (at.minY + at.maxY) / 2 };
    return insideRing(middle, outer) && !off.some((ring) => insideRing(middle, ring));
  };
  for (let column = 0; column < columns; column += 1) {
    let before: boolean | null = null;
    for (let row = 0; row < rows; row += 1) {
      const spot = column * rows + row;
      const onLine = free[spot] === 0;
      // Where the step is larger than the box, a line may lie between two spots.
      const known: boolean | null = stepM < size.yM ? before : null;
      const inside: boolean = !onLine && (known ?? isInside(column, row));
      if (!inside) free[spot] = 0;
      before = onLine ? null : inside;
    }
  }
}

/** True where a segment runs through the inside of a box (clipping by Liang and Barsky). */
function runsThrough(a: Point, b: Point, box: Box): boolean {
  const hair = 1e-7;
  const [minX, maxX, minY, maxY] = [box.minX + hair, box.maxX - hair, box.minY + hair, box.maxY - hair];
  if (Math.max(a.xM, b.xM) <= minX || Math.min(a.xM, b.xM) >= maxX) return false;
  if (Math.max(a.yM, b.yM) <= minY || Math.min(a.yM, b.yM) >= maxY) return false;
  const [dx, dy] = [b.xM - a.xM, b.yM - a.yM];
  const [x1, x2] = dx === 0 ? [0, 1] : ordered((minX - a.xM) / dx, (maxX - a.xM) / dx);
  const [y1, y2] = dy === 0 ? [0, 1] : ordered((minY - a.yM) / dy, (maxY - a.yM) / dy);
  return Math.max(0, x1, y1) < Math.min(1, x2, y2);
}

function ordered(one: number, other: number): readonly [number, number] {
  return one < other ? [one, other] : [other, one];
}
