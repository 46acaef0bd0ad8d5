import { flatten } from '../shape/bulge.ts';
import type { BoardShape } from '../shape/outline.ts';
import {
  type Box,
  boxOf,
  distanceToBox,
  edgesOf,
  insideRing,
  type Point,
  pointToSegment,
  type Ring,
  squareAbout,
} from '../shape/point.ts';

/** Something on a board that wires go round. */
export type Barrier =
  | { readonly id: string; readonly box: Box }
  | { readonly id: string; readonly centre: Point; readonly radiusM: number };

/** The lines that wires are laid on, and how free each of their meeting points is. */
export interface TrackGrid {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** Room from each point to the nearest edge or opening of the board; below zero off the board. By `x * ys.length + y`. */
  readonly toEdgeM: Float64Array;
  /** Room from each point to the nearest barrier; infinite where there is none. */
  readonly toBarrierM: Float64Array;
  readonly barriers: readonly Barrier[];
  readonly outer: Ring;
  readonly box: Box;
  /** The widest step between two lines. */
  readonly stepM: number;
}

/** The number of the point where a column and a row meet; -1 outside the grid. */
export function nodeAt({ xs, ys }: TrackGrid, x: number, y: number): number {
  return x < 0 || y < 0 || x >= xs.length || y >= ys.length ? -1 : x * ys.length + y;
}

/** The point of a number. */
export function pointOf({ xs, ys }: TrackGrid, node: number): Point {
  return { xM: xs[Math.floor(node / ys.length)] ?? 0, yM: ys[node % ys.length] ?? 0 };
}

/** Distance from a point to a barrier, metres; below zero inside a round one, 0 inside a box. */
export function toBarrier(p: Point, barrier: Barrier): number {
  if ('box' in barrier) return distanceToBox(p, barrier.box);
  return Math.hypot(p.xM - barrier.centre.xM, p.yM - barrier.centre.yM) - barrier.radiusM;
}

/** What stands before a terminal, other than the part that it belongs to: nearer than `needM` to the way straight out. */
export function barriersBefore(
  barriers: readonly Barrier[],
  terminal: Point,
  out: Point,
  needM: number,
): readonly Barrier[] {
  const pieces = Math.max(1, Math.ceil(Math.hypot(out.xM - terminal.xM, out.yM - terminal.yM) / 0.001));
  const way = Array.from({ length: pieces + 1 }, (_, piece) => ({
    xM: terminal.xM + (piece / pieces) * (out.xM - terminal.xM),
    yM: terminal.yM + (piece / pieces) * (out.yM - terminal.yM),
  }));
  return barriers.filter(
    (one) => toBarrier(terminal, one) > 1e-4 && way.some((p) => toBarrier(p, one) < needM - 1e-6),
  );
}

/**
 * A grid over a board with lines every `pitchM` and through every terminal, so that wires start and end
 * straight; lines nearer than 0.4 of the pitch to a terminal's give way to it. At most 400 even lines a side.
 */
export function trackGrid(
  shape: BoardShape,
  barriers: readonly Barrier[],
  terminals: readonly Point[],
  wantedPitchM: number,
): TrackGrid {
  const [outer = [], ...openings] = [shape.outline, ...shape.cutouts].map((loop) => flatten(loop, 0.0002));
  const box = boxOf(outer);
  const least = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 400;
  const pitchM = Math.max(wantedPitchM, least);
  const xs = lines(
    box.minX,
    box.maxX,
    terminals.map(({ xM }) => xM),
    pitchM,
  );
  const ys = lines(
    box.minY,
    box.maxY,
    terminals.map(({ yM }) => yM),
    pitchM,
  );
  const step = (list: readonly number[]) =>
    list.reduce((most, value, at) => Math.max(most, value - (list[at - 1] ?? value)), 0);
  return {
    xs,
    ys,
    toEdgeM: roomAt(xs, ys, edgeRoom(outer, openings, shape.holes)),
    toBarrierM: roomAt(xs, ys, barrierRoom(barriers)),
    barriers,
    outer,
    box,
    stepM: Math.max(step(xs), step(ys)),
  };
}

/** The room at each point where a column and a row meet. */
function roomAt(xs: readonly number[], ys: readonly number[], roomM: (p: Point) => number): Float64Array {
  const rooms = new Float64Array(xs.length * ys.length);
  let node = 0;
  for (const xM of xs)
    for (const yM of ys) {
      rooms[node] = roomM({ xM, yM });
      node += 1;
    }
  return rooms;
}

/** Further off than this beyond the least room so far, something gives no less: no rounding makes up for it (m). */
const surelyM = 1e-12;

/** The room from a point to the nearest barrier. What lies further off along x or y alone is not measured. */
function barrierRoom(barriers: readonly Barrier[]): (p: Point) => number {
  const near = barriers.map((one) => ({
    one,
    box: 'box' in one ? one.box : squareAbout(one.centre, one.radiusM),
  }));
  return (p) => {
    let leastM = Infinity;
    for (const { one, box } of near)
      if (reaches(box, p, leastM + surelyM)) leastM = Math.min(leastM, toBarrier(p, one));
    return leastM;
  };
}

/** The room from a point to the nearest edge, opening or hole of the board; below zero off the board. */
function edgeRoom(outer: Ring, openings: readonly Ring[], holes: BoardShape['holes']): (p: Point) => number {
  const edges = [outer, ...openings].flatMap(edgesOf).map((edge) => ({ edge, box: boxOf(edge) }));
  return (p) => {
    if (!insideRing(p, outer) || openings.some((ring) => insideRing(p, ring))) return -1;
    let leastM = Infinity;
    for (const { edge, box } of edges)
      if (reaches(box, p, leastM + surelyM)) leastM = Math.min(leastM, pointToSegment(p, ...edge));
    return holes.reduce(
      (least, hole) => Math.min(least, Math.hypot(p.xM - hole.xM, p.yM - hole.yM) - hole.diameterM / 2),
      leastM,
    );
  };
}

/** True where a box is no further from a point than so far, along x and along y. */
function reaches({ minX, minY, maxX, maxY }: Box, { xM, yM }: Point, farM: number): boolean {
  return minX - xM <= farM && xM - maxX <= farM && minY - yM <= farM && yM - maxY <= farM;
}

function lines(from: number, to: number, wanted: readonly number[], pitchM: number): number[] {
  const own = [...new Set(wanted.map((value) => Math.round(value * 1e7) / 1e7))]
    .filter((value) => value >= from && value <= to)
    .toSorted((a, b) => a - b);
  const count = Math.max(1, Math.floor((to - from) / pitchM));
  const first = from + (to - from - (count - 1) * pitchM) / 2;
  const even = Array.from({ length: count }, (_, at) => first + at * pitchM).filter(
    (value) => !own.some((line) => Math.abs(line - value) < 0.4 * pitchM),
  );
  return [...own, ...even].toSorted((a, b) => a - b);
}
