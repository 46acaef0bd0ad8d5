import { flatten } from '../../shape/bulge.ts';
import type { BoardShape } from '../../shape/outline.ts';
import { type Box, edgesOf, type Point, type Ring, ringArea } from '../../shape/point.ts';
import type { Barrier } from '../track-grid.ts';

/** An edge of the board: from point to point, with the board to its left. */
export interface WallEdge {
  readonly a: Point;
  readonly b: Point;
  readonly isOuter: boolean;
}

/** What wires keep away from: boxes, round things as the squares about them, and the edges of the board. */
export interface Walls {
  readonly boxes: readonly Box[];
  readonly edges: readonly WallEdge[];
}

/** The walls of a board with what stands on it. */
export function wallsOf(shape: BoardShape, barriers: readonly Barrier[]): Walls {
  const rounds = shape.holes.map(({ xM, yM, diameterM }) => squareAbout({ xM, yM }, diameterM / 2));
  const boxes = barriers.map((one) => ('box' in one ? one.box : squareAbout(one.centre, one.radiusM)));
  return {
    boxes: [...boxes, ...rounds],
    edges: [
      ...wallEdges(flatten(shape.outline, 0.0002), true),
      ...shape.cutouts.flatMap((loop) => wallEdges(flatten(loop, 0.0002), false)),
    ],
  };
}

function squareAbout({ xM, yM }: Point, radiusM: number): Box {
  return { minX: xM - radiusM, maxX: xM + radiusM, minY: yM - radiusM, maxY: yM + radiusM };
}

function wallEdges(ring: Ring, isOuter: boolean): WallEdge[] {
  const turned = ringArea(ring) > 0 === isOuter ? ring : ring.toReversed();
  return edgesOf(turned).map(([a, b]) => ({ a, b, isOuter }));
}

/** A straight piece of wire, level or upright: from where it is looked across, and from where to where it goes (m). */
export interface Run {
  readonly level: boolean;
  readonly atM: number;
  readonly fromM: number;
  readonly toM: number;
  /** The side by which it leaves the board; -1: by none. */
  readonly exitSide: number;
}

/** From where to where along a run something stands (m). */
export type Stretch = readonly [number, number];

/** Between what a run may lie, and where along it stands what holds it off. */
export interface Bounds {
  readonly lowM: number;
  readonly highM: number;
  readonly lowBy: Stretch;
  readonly highBy: Stretch;
}

const everywhere: Stretch = [-Infinity, Infinity];
const roundingM = 1e-6;

/**
 * Between what a run may be shifted across, so that its middle line keeps `needM` from every wall that it would pass:
 * those that lie below the line from which it is looked stay below, the others above. Searches call it very often.
 */
export function boundsOf({ boxes, edges }: Walls, run: Run, needM: number): Bounds {
  const { level, atM, exitSide } = run;
  const [fromM, toM] = [run.fromM + roundingM, run.toM - roundingM];
  const found = { lowM: -Infinity, highM: Infinity, lowBy: everywhere, highBy: everywhere };
  for (const { minX, minY, maxX, maxY } of boxes) {
    const [first, last] = level ? [minX, maxX] : [minY, maxY];
    if (last > fromM && first < toM)
      keep(found, atM, level ? minY : minX, level ? maxY : maxX, needM, first, last);
  }
  for (const { a, b, isOuter } of edges) {
    const [p, q] = level ? [a.xM, b.xM] : [a.yM, b.yM];
    const first = Math.max(run.fromM, Math.min(p, q));
    const last = Math.min(run.toM, Math.max(p, q));
    if (last <= fromM || first >= toM || last < first) continue;
    if (isOuter && exitSide >= 0 && faces(a, b, exitSide)) continue;
    const [r, s] = level ? [a.yM, b.yM] : [a.xM, b.xM];
    const isAcross = Math.abs(q - p) < 1e-9;
    const u = isAcross ? r : r + ((first - p) / (q - p)) * (s - r);
    const v = isAcross ? s : r + ((last - p) / (q - p)) * (s - r);
    keep(found, atM, Math.min(u, v), Math.max(u, v), needM, first, last);
  }
  return found;
}

/** Narrows bounds by what stands from `minM` to `maxM` across, and from `first` to `last` along. */
function keep(
  bounds: { lowM: number; highM: number; lowBy: Stretch; highBy: Stretch },
  atM: number,
  minM: number,
  maxM: number,
  needM: number,
  first: number,
  last: number,
): void {
  if (minM + maxM < 2 * atM) {
    if (maxM + needM <= bounds.lowM) return;
    bounds.lowM = maxM + needM;
    bounds.lowBy = [first, last];
  } else if (minM - needM < bounds.highM) {
    bounds.highM = minM - needM;
    bounds.highBy = [first, last];
  }
}

/** Bounds that a further thing makes narrower, where it does. */
export function tighter(bounds: Bounds, low: boolean, atM: number, by: Stretch): Bounds {
  if (low) return atM > bounds.lowM ? { ...bounds, lowM: atM, lowBy: by } : bounds;
  return atM < bounds.highM ? { ...bounds, highM: atM, highBy: by } : bounds;
}

/** True where an edge, with the board to its left, looks out to a side at all. */
export function faces(a: Point, b: Point, side: number): boolean {
  const [outX, outY] = [b.yM - a.yM, a.xM - b.xM];
  return ([outX, outY, -outX, -outY][side] ?? 0) > 1e-9;
}
