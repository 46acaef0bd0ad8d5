import { type Traced, traced } from '../../model/trace.ts';
import { type HoleRoom, holeLines, holeRoom } from '../cut/hole-room.ts';
import { flatten, type Loop } from './bulge.ts';
import type { BoardShape } from './outline.ts';
import { distance, edgesOf, nearestOnSegment, type Point, pointToSegment, type Ring, turn } from './point.ts';
import { insideRegion, type Region } from './region.ts';

/** Arcs are flattened to this for webs, metres: far below what a saw can do. */
const toleranceM = 0.000002;

/** A web: where it is narrowest, and between what. */
export interface Web {
  readonly from: Point;
  readonly to: Point;
  readonly widthM: number;
  /** `edge`, `cutout-1` and so on in the order of the shape, or a hole's id. */
  readonly between: readonly [string, string];
}

/** A line that bounds material, the material on its left. */
interface Bound {
  readonly name: string;
  readonly ring: Ring;
  /** Corners where the material goes more than half round: those that a web can end at. */
  readonly inward: ReadonlySet<Point>;
}

/**
 * The narrowest web: the least width of material between two openings, an opening and the edge, or two
 * parts of the same line (a neck), measured square across. The ends of a web are inward corners, round
 * openings, or straight edges that the web meets at a right angle: the point of an outward corner is none.
 */
export function narrowestWeb(shape: BoardShape): Traced<number> & { readonly web: Web | null } {
  const bounds = boundsOf(shape);
  const narrowest = new Narrowest(shape.region);
  websOfHoles(shape, bounds, narrowest);
  for (const [at, one] of bounds.entries())
    for (const other of bounds.slice(at)) websBetween(one, other, narrowest);
  const { web } = narrowest;
  const width = traced(web?.widthM ?? 0, 'm', {
    rule: 'narrowest-web',
    formula: 'least distance across material between two of its lines',
    citation: 'plane geometry',
    inputs: web
      ? [
          ['between', web.between.join(' and '), ''],
          ['x', web.from.xM, 'm'],
          ['y', web.from.yM, 'm'],
        ]
      : [],
  });
  return { ...width, web };
}

/** The narrowest of the webs offered that runs in material. */
class Narrowest {
  web: Web | null = null;
  readonly #region: Region;

  constructor(region: Region) {
    this.#region = region;
  }

  offer(from: Point, to: Point, widthM: number, between: readonly [string, string]): void {
    if (this.web && widthM >= this.web.widthM) return;
    const web = { from: { xM: from.xM, yM: from.yM }, to: { xM: to.xM, yM: to.yM }, widthM, between };
    if (runsInMaterial(web, this.#region)) this.web = web;
  }

  /** Nothing this wide or wider need be offered. */
  get enoughM(): number {
    return this.web?.widthM ?? Infinity;
  }
}

/** The edge and the cut-outs of a shape, by their names. */
export function boundsOf(shape: BoardShape): Bound[] {
  const named = (loop: Loop, name: string): Bound => {
    const ring = flatten(loop, toleranceM);
    return { name, ring, inward: new Set(inwardCorners(ring)) };
  };
  return [named(shape.outline, 'edge'), ...shape.cutouts.map((loop, at) => named(loop, `cutout-${at + 1}`))];
}

/** The inward corners of a line with material on its left. */
function inwardCorners(ring: Ring): Point[] {
  return ring.filter((p, at) => {
    const [before, after] = [ring[(at + ring.length - 1) % ring.length], ring[(at + 1) % ring.length]];
    return before && after ? turn(before, p, after) < 0 : false;
  });
}

/** Webs from the inward corners of each line to the other line, and between straight parallel edges. */
function websBetween(one: Bound, other: Bound, narrowest: Narrowest): void {
  const between = [one.name, other.name] as const;
  parallelWebs(one.ring, other.ring, between, narrowest);
  for (const p of one.inward) websFrom(p, other, between, narrowest);
  if (one !== other) for (const p of other.inward) websFrom(p, one, between, narrowest);
}

/** The webs from a corner to each edge that it does not belong to, met squarely or at an inward corner. */
function websFrom(p: Point, { ring, inward }: Bound, between: Web['between'], narrowest: Narrowest): void {
  const at = ring.indexOf(p);
  const neighbours = [ring[(at + ring.length - 1) % ring.length], ring[(at + 1) % ring.length]];
  let a = ring.at(-1) ?? p;
  for (const b of ring) {
    const [from, to] = [a, b];
    a = b;
    const widthM = pointToSegment(p, from, to);
    if (widthM >= narrowest.enoughM || from === p || to === p || turn(from, to, p) <= 0) continue;
    const foot = nearestOnSegment(p, from, to);
    const end = distance(foot, from) < 1e-9 ? from : distance(foot, to) < 1e-9 ? to : null;
    if (end && at >= 0 && neighbours.includes(end)) continue;
    if (end && !inward.has(end) && !square(p, foot, from, to)) continue;
    narrowest.offer(p, foot, widthM, between);
  }
}

function square(p: Point, foot: Point, a: Point, b: Point): boolean {
  const dot = (p.xM - foot.xM) * (b.xM - a.xM) + (p.yM - foot.yM) * (b.yM - a.yM);
  return Math.abs(dot) < 1e-6 * distance(a, b) * distance(p, foot);
}

/** Edges shorter than this are chords of arcs, metres. */
const longEdgeM = 0.002;

/** Webs between long edges that run side by side in opposite directions, material between them. */
function parallelWebs(one: Ring, other: Ring, between: Web['between'], narrowest: Narrowest): void {
  const long = ([a, b]: readonly [Point, Point]) => distance(a, b) > longEdgeM;
  const others = edgesOf(other).filter(long);
  for (const [a, b] of edgesOf(one).filter(long))
    for (const [c, d] of others) {
      const from = middleOfOverlap(a, b, c, d);
      if (!from || turn(c, d, from) <= 0) continue;
      const to = nearestOnSegment(from, c, d);
      narrowest.offer(from, to, distance(from, to), between);
    }
}

/** The point of a-b opposite the middle of the stretch where c-d runs beside it the other way; null where none does. */
function middleOfOverlap(a: Point, b: Point, c: Point, d: Point): Point | null {
  const lengthM = distance(a, b);
  const [ux, uy] = [(b.xM - a.xM) / lengthM, (b.yM - a.yM) / lengthM];
  const alongM = (p: Point) => (p.xM - a.xM) * ux + (p.yM - a.yM) * uy;
  const [start, end] = [Math.max(0, alongM(d)), Math.min(lengthM, alongM(c))];
  const parallel = alongM(c) - alongM(d) > (1 - 1e-9) * distance(c, d);
  if (!parallel || end - start < longEdgeM) return null;
  const middle = (start + end) / 2;
  return { xM: a.xM + ux * middle, yM: a.yM + uy * middle };
}

function websOfHoles({ holes }: BoardShape, bounds: readonly Bound[], narrowest: Narrowest): void {
  for (const [at, hole] of holes.entries()) {
    for (const { name, ring } of bounds) {
      const to = nearestOf(hole, ring);
      narrowest.offer(hole, to, distance(hole, to) - hole.diameterM / 2, [hole.id, name]);
    }
    for (const other of holes.slice(at + 1)) {
      const widthM = distance(hole, other) - (hole.diameterM + other.diameterM) / 2;
      narrowest.offer(hole, other, widthM, [hole.id, other.id]);
    }
  }
}

function nearestOf(p: Point, ring: Ring): Point {
  const feet = edgesOf(ring).map(([a, b]) => nearestOnSegment(p, a, b));
  return feet.reduce((best, foot) => (distance(p, foot) < distance(p, best) ? foot : best), feet[0] ?? p);
}

/** True where a web lies in material: points along it are, so that it does not span a gap. */
export function runsInMaterial({ from, to }: Web, region: Region): boolean {
  return [0.02, 0.25, 0.5, 0.75, 0.98].every((share) =>
    insideRegion(
      { xM: from.xM + share * (to.xM - from.xM), yM: from.yM + share * (to.yM - from.yM) },
      region,
    ),
  );
}

/** Room of a hole of a shape by its id: see `holeRoom`. */
export interface NamedHoleRoom extends HoleRoom {
  readonly hole: string;
}

/** Rim-to-edge and rim-to-corner distances of round holes, metres. Corners are those of the outer line. */
export function holeRooms(shape: BoardShape): readonly NamedHoleRoom[] {
  const lines = holeLines(shape);
  return shape.holes.map((hole) => ({ hole: hole.id, ...holeRoom(hole, lines) }));
}
