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
  const points = xs.flatMap((xM) => ys.map((yM) => ({ xM, yM })));
  const edges = [outer, ...openings].flatMap(edgesOf);
  const step = (list: readonly number[]) =>
    list.reduce((most, value, at) => Math.max(most, value - (list[at - 1] ?? value)), 0);
  return {
    xs,
    ys,
    toEdgeM: Float64Array.from(points, (p) => edgeRoomM(p, outer, openings, edges, shape.holes)),
    toBarrierM: Float64Array.from(points, (p) =>
      barriers.reduce((least, barrier) => Math.min(least, toBarrier(p, barrier)), Infinity),
    ),
    barriers,
    outer,
    box,
    stepM: Math.max(step(xs), step(ys)),
  };
}

function edgeRoomM(
  p: Point,
  outer: Ring,
  openings: readonly Ring[],
  edges: ReturnType<typeof edgesOf>,
  holes: BoardShape['holes'],
): number {
  if (!insideRing(p, outer) || openings.some((ring) => insideRing(p, ring))) return -1;
  const toLine = edges.reduce((least, [a, b]) => Math.min(least, pointToSegment(p, a, b)), Infinity);
  return holes.reduce(
    (least, hole) => Math.min(least, Math.hypot(p.xM - hole.xM, p.yM - hole.yM) - hole.diameterM / 2),
    toLine,
  );
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
