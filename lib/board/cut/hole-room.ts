import { type Arc, arcOf, type Loop, loopEdges } from '../shape/bulge.ts';
import type { BoardShape } from '../shape/outline.ts';
import { distance, type Point, pointToSegment, turn } from '../shape/point.ts';

/** What a hole keeps away from: the edges of the outline and of the cut-outs, and the sharp outward corners. */
export interface HoleLines {
  /** The outline, and the cut-outs in it. */
  readonly outer: readonly Edge[];
  readonly openings: readonly (readonly Edge[])[];
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
  /** Below zero where it reaches past the edge: by so much it stands outside the outline, or in a cut-out. */
  readonly toEdgeM: number;
  /** Infinite where the board has no sharp corner. */
  readonly toCornerM: number;
}

/** The lines of a board that its holes are measured to, worked out once. */
export function holeLines({ outline, cutouts }: Pick<BoardShape, 'outline' | 'cutouts'>): HoleLines {
  return {
    outer: edgesOfLoop(outline),
    openings: cutouts.map(edgesOfLoop),
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
  let lineM = Infinity;
  for (const edge of lines.outer) lineM = Math.min(lineM, pointToEdge(hole, edge));
  for (const opening of lines.openings)
    for (const edge of opening) lineM = Math.min(lineM, pointToEdge(hole, edge));
  let toCornerM = Infinity;
  for (const corner of lines.corners) toCornerM = Math.min(toCornerM, distance(hole, corner));
  const rimM = hole.diameterM / 2;
  return {
    toEdgeM: (groundAt(hole, lines) === 'material' ? lineM : -lineM) - rimM,
    toCornerM: toCornerM - rimM,
  };
}

/** What a point of a board stands in: its material, a cut-out, or nothing, outside its outline. */
export function groundAt(p: Point, { outer, openings }: HoleLines): 'material' | 'cut-out' | 'outside' {
  if (!isInside(p, outer)) return 'outside';
  return openings.some((opening) => isInside(p, opening)) ? 'cut-out' : 'material';
}

/**
 * Inside a closed run of edges: seen from the point, they turn once round it (winding number), and not at all where it
 * is outside. Each edge is told by one angle, so that no point is special, be it on a chord or level with a corner.
 */
function isInside(p: Point, edges: readonly Edge[]): boolean {
  let turnedRad = 0;
  for (const edge of edges) turnedRad += turnedAbout(p, edge);
  return Math.abs(turnedRad) > Math.PI;
}

/** The angle that an edge turns about a point, radians; above zero counter-clockwise. */
function turnedAbout(p: Point, { from, to, arc }: Edge): number {
  const [ax, ay, bx, by] = [from.xM - p.xM, from.yM - p.yM, to.xM - p.xM, to.yM - p.yM];
  const chordRad = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  if (!arc || distance(p, arc.centre) >= arc.radiusM) return chordRad;
  // Between an arc and its chord, the arc passes on the other side.
  if (arc.sweepRad > 0) return chordRad < 0 ? chordRad + 2 * Math.PI : chordRad;
  return chordRad > 0 ? chordRad - 2 * Math.PI : chordRad;
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
