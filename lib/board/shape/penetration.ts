import { convexPieces, hullOf } from './convex.ts';
import { edgesOf, nearestOnSegment, type Point, type Ring } from './point.ts';

const origin: Point = { xM: 0, yM: 0 };

/** Points nearer to a line than this lie on it, metres. */
const hairM = 1e-9;

/**
 * How deep two rings stand in each other, metres: the shortest push of one that parts them; 0 where they are apart. It
 * is the distance from the origin to the line of their Minkowski difference (van den Bergen, Collision Detection in
 * Interactive 3D Environments, chapter 4), taken over convex pieces of both, so that a notch counts as one.
 */
export function penetrationM(one: Ring, other: Ring): number {
  const others = convexPieces(other);
  const sums = convexPieces(one).flatMap((a) => others.map((b) => differenceOf(a, b)));
  if (!sums.some((sum) => depthIn(origin, sum) > hairM)) return 0;
  const edges = sums
    .flatMap((sum, of) =>
      edgesOf(sum).map(([a, b]) => ({ a, b, of, nearM: toOrigin(nearestOnSegment(origin, a, b)) })),
    )
    .toSorted((p, q) => p.nearM - q.nearM);
  let leastM = Infinity;
  for (const { a, b, of, nearM } of edges) {
    if (nearM >= leastM) break;
    for (const [from, to] of uncovered(a, b, sums, of))
      leastM = Math.min(leastM, toOrigin(nearestOnSegment(origin, from, to)));
  }
  return leastM === Infinity ? 0 : leastM;
}

const toOrigin = ({ xM, yM }: Point): number => Math.hypot(xM, yM);

/** All differences of a point of one convex ring and a point of another: a convex ring. */
function differenceOf(one: Ring, other: Ring): Ring {
  return hullOf(one.flatMap((p) => other.map((q) => ({ xM: p.xM - q.xM, yM: p.yM - q.yM }))));
}

/** How deep a point stands in a convex ring, metres; below zero outside. */
function depthIn(p: Point, ring: Ring): number {
  return Math.min(...edgesOf(ring).map(([a, b]) => leftOfM(p, a, b)));
}

function leftOfM(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.xM - a.xM, b.yM - a.yM];
  return (dx * (p.yM - a.yM) - dy * (p.xM - a.xM)) / Math.hypot(dx, dy);
}

/** The stretches of a segment that lie inside no other of the convex rings. */
function uncovered(a: Point, b: Point, rings: readonly Ring[], own: number): [Point, Point][] {
  const covered = rings
    .flatMap((ring, at) => (at === own ? [] : within(a, b, ring)))
    .toSorted((p, q) => p[0] - q[0]);
  const at = (share: number): Point => ({
    xM: a.xM + share * (b.xM - a.xM),
    yM: a.yM + share * (b.yM - a.yM),
  });
  const free: [Point, Point][] = [];
  let from = 0;
  for (const [start, end] of covered) {
    if (start > from) free.push([at(from), at(start)]);
    from = Math.max(from, end);
  }
  if (from < 1) free.push([at(from), b]);
  return free;
}

/** The share of a segment that lies inside a convex ring (Cyrus and Beck's clipping); one on its line is not inside. */
function within(a: Point, b: Point, ring: Ring): [number, number][] {
  let [from, to] = [0, 1];
  for (const [p, q] of edgesOf(ring)) {
    const [atA, atB] = [leftOfM(a, p, q) - hairM, leftOfM(b, p, q) - hairM];
    if (atA <= 0 && atB <= 0) return [];
    if (atA <= 0) from = Math.max(from, atA / (atA - atB));
    else if (atB <= 0) to = Math.min(to, atA / (atA - atB));
  }
  return from < to ? [[from, to]] : [];
}
