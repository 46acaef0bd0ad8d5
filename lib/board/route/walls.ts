import { flatten } from '../shape/bulge.ts';
import type { BoardShape } from '../shape/outline.ts';
import { type Box, edgesOf, type Point, type Ring, ringArea, squareAbout } from '../shape/point.ts';
import type { Barrier } from './track-grid.ts';

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

function wallEdges(ring: Ring, isOuter: boolean): WallEdge[] {
  const turned = ringArea(ring) > 0 === isOuter ? ring : ring.toReversed();
  return edgesOf(turned).map(([a, b]) => ({ a, b, isOuter }));
}

/** Where a line across a side of the board comes to its edge (m), not finite where it meets none; and whether that is slanted, as round a corner. */
export function exitEdge(
  { edges }: Walls,
  side: number,
  atM: number,
): { readonly lineM: number; readonly isSlanted: boolean } {
  const level = (side & 1) === 0;
  let [furthestM, isSlanted] = [side < 2 ? -Infinity : Infinity, false];
  for (const { a, b, isOuter } of edges) {
    const [p, q] = level ? [a.yM, b.yM] : [a.xM, b.xM];
    if (!isOuter || p > atM === q > atM) continue;
    const [r, s] = level ? [a.xM, b.xM] : [a.yM, b.yM];
    const hitM = r + ((atM - p) / (q - p)) * (s - r);
    if (side < 2 ? hitM <= furthestM : hitM >= furthestM) continue;
    [furthestM, isSlanted] = [hitM, Math.abs(s - r) > 1e-9];
  }
  return { lineM: furthestM, isSlanted };
}

/** True where an edge, with the board to its left, looks out to a side at all. */
export function faces(a: Point, b: Point, side: number): boolean {
  const [outX, outY] = [b.yM - a.yM, a.xM - b.xM];
  return ([outX, outY, -outX, -outY][side] ?? 0) > 1e-9;
}
