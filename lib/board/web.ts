import type { Traced } from '../model/trace.ts';
import { flatten, type Loop } from './bulge.ts';
import { computed, input } from './measure.ts';
import type { BoardShape, RoundHole } from './outline.ts';
import { distance, edgesOf, nearestOnSegment, type Point, pointToRing, type Ring, turn } from './point.ts';
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
  const candidates = bounds.flatMap((one, at) =>
    bounds.slice(at).flatMap((other) => websBetween(one, other)),
  );
  const holes = holeWebs(shape, bounds);
  const web =
    [...candidates, ...holes]
      .toSorted((a, b) => a.widthM - b.widthM)
      .find((candidate) => runsInMaterial(candidate, shape.region)) ?? null;
  const traced = computed(
    web?.widthM ?? 0,
    'm',
    {
      rule: 'narrowest-web',
      formula: 'least distance across material between two of its lines',
      citation: 'plane geometry',
    },
    web
      ? [
          input('between', web.between.join(' and '), ''),
          input('x', web.from.xM, 'm'),
          input('y', web.from.yM, 'm'),
        ]
      : [],
  );
  return { ...traced, web };
}

function boundsOf(shape: BoardShape): Bound[] {
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
function websBetween(one: Bound, other: Bound): Web[] {
  const between = [one.name, other.name] as const;
  return [
    ...[...one.inward].flatMap((p) => webFrom(p, other, between)),
    ...(one === other ? [] : [...other.inward].flatMap((p) => webFrom(p, one, between))),
    ...parallelWebs(one.ring, other.ring, between),
  ];
}

/** The webs from a corner to each edge that it does not belong to, met squarely or at an inward corner. */
function webFrom(p: Point, { ring, inward }: Bound, between: readonly [string, string]): Web[] {
  const at = ring.indexOf(p);
  const neighbours = [ring[(at + ring.length - 1) % ring.length], ring[(at + 1) % ring.length]];
  return edgesOf(ring).flatMap(([a, b]) => {
    if (a === p || b === p || turn(a, b, p) <= 0) return [];
    const to = nearestOnSegment(p, a, b);
    const end = distance(to, a) < 1e-9 ? a : distance(to, b) < 1e-9 ? b : null;
    if (end && at >= 0 && neighbours.includes(end)) return [];
    if (end && !inward.has(end) && !square(p, to, a, b)) return [];
    return [{ from: p, to, widthM: distance(p, to), between }];
  });
}

function square(p: Point, foot: Point, a: Point, b: Point): boolean {
  const dot = (p.xM - foot.xM) * (b.xM - a.xM) + (p.yM - foot.yM) * (b.yM - a.yM);
  return Math.abs(dot) < 1e-6 * distance(a, b) * distance(p, foot);
}

/** Edges shorter than this are chords of arcs, metres. */
const longEdgeM = 0.002;

/** Webs between long edges that run side by side in opposite directions, material between them. */
function parallelWebs(one: Ring, other: Ring, between: readonly [string, string]): Web[] {
  const long = ([a, b]: readonly [Point, Point]) => distance(a, b) > longEdgeM;
  const others = edgesOf(other).filter(long);
  return edgesOf(one)
    .filter(long)
    .flatMap(([a, b]) =>
      others.flatMap(([c, d]) => {
        const from = middleOfOverlap(a, b, c, d);
        if (!from || turn(c, d, from) <= 0) return [];
        const to = nearestOnSegment(from, c, d);
        return [{ from, to, widthM: distance(from, to), between }];
      }),
    );
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

function holeWebs({ holes }: BoardShape, bounds: readonly Bound[]): Web[] {
  return holes.flatMap((hole, at) => [
    ...bounds.map(({ name, ring }): Web => {
      const to = nearestOf(hole, ring);
      return {
        from: centreOf(hole),
        to,
        widthM: distance(hole, to) - hole.diameterM / 2,
        between: [hole.id, name],
      };
    }),
    ...holes.slice(at + 1).map((other): Web => {
      const widthM = distance(hole, other) - (hole.diameterM + other.diameterM) / 2;
      return { from: centreOf(hole), to: centreOf(other), widthM, between: [hole.id, other.id] };
    }),
  ]);
}

function centreOf({ xM, yM }: Point): Point {
  return { xM, yM };
}

function nearestOf(p: Point, ring: Ring): Point {
  const feet = edgesOf(ring).map(([a, b]) => nearestOnSegment(p, a, b));
  return feet.reduce((best, foot) => (distance(p, foot) < distance(p, best) ? foot : best), feet[0] ?? p);
}

/** True where a web lies in material: points along it are, so that it does not span a gap. */
function runsInMaterial({ from, to }: Web, region: Region): boolean {
  return [0.02, 0.25, 0.5, 0.75, 0.98].every((share) =>
    insideRegion(
      { xM: from.xM + share * (to.xM - from.xM), yM: from.yM + share * (to.yM - from.yM) },
      region,
    ),
  );
}

/** Where a hole stands to the nearest edge or opening and to the nearest outward corner, metres from its rim. */
export interface HoleRoom {
  readonly hole: string;
  readonly toEdgeM: number;
  /** Infinite where the board has no sharp corner. */
  readonly toCornerM: number;
}

/** Rim-to-edge and rim-to-corner distances of round holes, metres. Corners are those of the outer line. */
export function holeRooms(shape: BoardShape): readonly HoleRoom[] {
  const corners = shape.outline.filter((p, at) => sharp(shape.outline, p, at));
  const bounds = boundsOf(shape);
  return shape.holes.map((hole: RoundHole) => ({
    hole: hole.id,
    toEdgeM: Math.min(...bounds.map(({ ring }) => pointToRing(hole, ring))) - hole.diameterM / 2,
    toCornerM: Math.min(...corners.map((p) => distance(hole, p))) - hole.diameterM / 2,
  }));
}

/** An outward corner between two straight edges. */
function sharp(loop: Loop, p: Loop[number], at: number): boolean {
  const [before, after] = [loop[(at + loop.length - 1) % loop.length], loop[(at + 1) % loop.length]];
  return !!before && !!after && before.bulge === 0 && p.bulge === 0 && turn(before, p, after) > 0;
}
