import { edgesOf, type Point, type Ring } from './point.ts';
import { difference, type Region, regionOf, union } from './region.ts';

/**
 * A region grown (`distanceM` above zero) or shrunk (below zero) on all its lines, corners rounded outwards:
 * the set of points within the distance, or the set of points further than it from everything outside
 * (Minkowski sum with a disc). Discs are drawn as regular polygons outside their circle, so that a keep-out
 * is never too small; they stand out by at most `toleranceM`.
 */
export function offset(region: Region, distanceM: number, toleranceM = 0.0001): Region {
  if (distanceM === 0) return region;
  const reach = Math.abs(distanceM);
  const rings = region.flatMap(({ outer, openings }) => [outer, ...openings]);
  const band = rings.flatMap((ring) =>
    edgesOf(ring).flatMap(([a, b]) => regionOf(...strip(a, b, reach), disc(a, reach, toleranceM))),
  );
  return distanceM > 0 ? union(region, band) : difference(region, band);
}

function strip(a: Point, b: Point, reach: number): Ring[] {
  const length = Math.hypot(b.xM - a.xM, b.yM - a.yM);
  if (length === 0) return [];
  const across = { xM: (-(b.yM - a.yM) / length) * reach, yM: ((b.xM - a.xM) / length) * reach };
  const at = (p: Point, side: number) => ({ xM: p.xM + side * across.xM, yM: p.yM + side * across.yM });
  return [[at(a, -1), at(b, -1), at(b, 1), at(a, 1)]];
}

/** A regular polygon round a circle, metres. */
export function disc(centre: Point, radiusM: number, toleranceM: number): Ring {
  const sides = Math.max(12, Math.ceil(Math.PI / Math.acos(radiusM / (radiusM + toleranceM))));
  const cornerM = radiusM / Math.cos(Math.PI / sides);
  return Array.from({ length: sides }, (_, at) => {
    const angle = (2 * Math.PI * at) / sides;
    return { xM: centre.xM + cornerM * Math.cos(angle), yM: centre.yM + cornerM * Math.sin(angle) };
  });
}
