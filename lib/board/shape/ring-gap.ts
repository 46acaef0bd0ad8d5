import { hullOf } from './convex.ts';
import { penetrationM } from './penetration.ts';
import {
  boxOf,
  distance,
  edgesOf,
  insideRing,
  type Point,
  pointToRing,
  type Ring,
  segmentToSegment,
  turn,
} from './point.ts';
import { difference, intersection, regionArea, regionOf, union } from './region.ts';

/** The least distance between the lines of two rings, metres. */
export function lineGapM(one: Ring, other: Ring): number {
  const edges = edgesOf(other);
  return Math.min(
    ...edgesOf(one).map(([a, b]) => Math.min(...edges.map(([c, d]) => segmentToSegment(a, b, c, d)))),
  );
}

/**
 * Room between two rings, metres: the least distance where they are apart; below zero where they overlap, by the
 * shortest push that parts them.
 */
export function gapM(one: Ring, other: Ring): number {
  const common = intersection(regionOf(one), regionOf(other));
  if (regionArea(common) < 1e-10) return lineGapM(one, other);
  return -penetrationM(one, other);
}

/**
 * Room of a ring inside a space, metres: the least distance to the space's line; below zero where it reaches out, by
 * the greatest distance of a corner outside, or by how deep what juts into the space stands in the ring.
 */
export function roomInsideM(ring: Ring, space: Ring): number {
  const out = ring.filter((p) => !insideRing(p, space) && pointToRing(p, space) > 1e-9);
  const outM = out.reduce((most, p) => Math.max(most, pointToRing(p, space)), 0);
  const roomM = lineGapM(ring, space);
  const most = roomM > 1e-9 ? outM : Math.max(outM, juttingInM(ring, space));
  return most > 1e-9 ? -most : roomM;
}

/** How deep the wall of a space stands in a ring where the space is notched, metres. */
function juttingInM(ring: Ring, space: Ring): number {
  const hull = hullOf(space);
  const walls = difference(regionOf(hull), regionOf(space));
  return Math.max(
    0,
    ...walls
      .filter((wall) => regionArea(intersection(regionOf(ring), [wall])) >= 1e-10)
      .map(({ outer }) => penetrationM(ring, withWallBehind(outer, hull))),
  );
}

/** What juts in, with the wall that it stands on: nothing gets out of its way by going out of the space. */
function withWallBehind(jutting: Ring, hull: Ring): Ring {
  const on = (p: Point, a: Point, b: Point) => Math.abs(turn(a, b, p)) <= 1e-9 * distance(a, b);
  const foot = edgesOf(hull).find(([a, b]) => jutting.filter((p) => on(p, a, b)).length > 1);
  if (!foot) return jutting;
  const [a, b] = foot;
  const { minX, minY, maxX, maxY } = boxOf(hull);
  const farM = Math.hypot(maxX - minX, maxY - minY);
  const [ux, uy] = [(b.xM - a.xM) / distance(a, b), (b.yM - a.yM) / distance(a, b)];
  const at = (p: Point, along: number, outM: number): Point => {
    return { xM: p.xM + ux * along + uy * outM, yM: p.yM + uy * along - ux * outM };
  };
  const wall = [at(a, -farM, 0), at(a, -farM, farM), at(b, farM, farM), at(b, farM, 0)];
  return union(regionOf(jutting), regionOf(wall))[0]?.outer ?? jutting;
}
