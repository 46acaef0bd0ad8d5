import { type Arc, arcOf, type Loop, loopEdges } from './bulge.ts';
import type { BoardShape } from './outline.ts';
import { distance, type Point, pointToSegment, turn } from './point.ts';

/** What a hole keeps away from: the edges of the outline and of the cut-outs, and the sharp outward corners. */
export interface HoleLines {
  readonly edges: readonly Edge[];
  readonly corners: readonly Point[];
}

interface Edge {
  readonly from: Point;
  readonly to: Point;
  /** Null where it is straight. */
  readonly arc: Arc | null;
}

/** From the rim of a hole to the nearest edge and to the nearest corner, metres. */
export interface HoleRoom {
  readonly toEdgeM: number;
  /** Infinite where the board has no sharp corner. */
  readonly toCornerM: number;
}

/** The lines of a board that its holes are measured to, worked out once. */
export function holeLines({ outline, cutouts }: Pick<BoardShape, 'outline' | 'cutouts'>): HoleLines {
  return {
    edges: [outline, ...cutouts].flatMap(edgesOfLoop),
    corners: outline.filter((p, at) => isSharp(outline, p, at)),
  };
}

function edgesOfLoop(loop: Loop): Edge[] {
  return loopEdges(loop).map(({ from, to }) => ({ from, to, arc: arcOf(from, to) }));
}

/** An outward corner between two straight edges: the outline runs counter-clockwise. */
function isSharp(loop: Loop, p: Loop[number], at: number): boolean {
  const [before, after] = [loop[(at + loop.length - 1) % loop.length], loop[(at + 1) % loop.length]];
  return !!before && !!after && before.bulge === 0 && p.bulge === 0 && turn(before, p, after) > 0;
}

/** Room of a round hole on a board, by plane geometry; arcs are taken as they are. */
export function holeRoom(hole: Point & { readonly diameterM: number }, lines: HoleLines): HoleRoom {
  let toEdgeM = Infinity;
  for (const edge of lines.edges) toEdgeM = Math.min(toEdgeM, pointToEdge(hole, edge));
  let toCornerM = Infinity;
  for (const corner of lines.corners) toCornerM = Math.min(toCornerM, distance(hole, corner));
  const rimM = hole.diameterM / 2;
  return { toEdgeM: toEdgeM - rimM, toCornerM: toCornerM - rimM };
}

function pointToEdge(p: Point, { from, to, arc }: Edge): number {
  if (!arc) return pointToSegment(p, from, to);
  const { centre, radiusM, startRad, sweepRad } = arc;
  const angle = Math.atan2(p.yM - centre.yM, p.xM - centre.xM) - startRad;
  const alongRad = (sweepRad > 0 ? angle : -angle) + 4 * Math.PI;
  // Beside the arc its nearest point lies on the ray from the centre; past its ends it is one of them.
  if (alongRad % (2 * Math.PI) <= Math.abs(sweepRad)) return Math.abs(distance(p, centre) - radiusM);
  return Math.min(distance(p, from), distance(p, to));
}
