import { flatten, type Loop } from './bulge.ts';
import { edgesOf, type Point, type Ring } from './point.ts';
import { difference, type Region, regionOf, union } from './region.ts';

/**
 * The material of an outline (counter-clockwise) and its openings (clockwise), grown on all its lines
 * (`distanceM` above zero) or shrunk (below zero), outward corners rounded: the points within the distance,
 * or those further than it from everything outside (Minkowski sum with a disc). Straight edges are exact;
 * round ones are off by `toleranceM` at most.
 */
export function offset(loops: readonly Loop[], distanceM: number, toleranceM = 0.0001): Region {
  const [outer, ...openings] = loops.map((loop) => flatten(loop, toleranceM / 2));
  if (!outer) return [];
  const material = [{ outer, openings }];
  if (distanceM === 0) return material;
  const capsules = [outer, ...openings].flatMap((ring) =>
    edgesOf(ring).map(([a, b]) => regionOf(capsule(a, b, Math.abs(distanceM), toleranceM / 2))),
  );
  const apply = distanceM > 0 ? union : difference;
  try {
    return apply(material, union(...capsules));
  } catch {
    // All at once is quick, but the library can lose its way among many nearly coincident lines.
    return capsules.reduce((region, one) => apply(region, one), material);
  }
}

/** A convex ring of the points within `reachM` of a segment: straight flanks exact, round ends by chords. */
function capsule(a: Point, b: Point, reachM: number, toleranceM: number): Ring {
  const quarter = Math.ceil(Math.PI / 4 / Math.acos(Math.max(0, 1 - toleranceM / reachM)));
  const sides = 4 * Math.max(3, quarter);
  const lengthM = Math.hypot(b.xM - a.xM, b.yM - a.yM);
  const u = { xM: ((b.xM - a.xM) / lengthM) * reachM, yM: ((b.yM - a.yM) / lengthM) * reachM };
  // The same directions for every capsule, so that two that share an end share its corners.
  const corners = Array.from({ length: sides }, (_, at) => {
    const angle = (2 * Math.PI * at) / sides;
    return { xM: reachM * Math.cos(angle), yM: reachM * Math.sin(angle) };
  });
  const ahead = corners.map(({ xM, yM }) => (xM * u.xM + yM * u.yM) / reachM ** 2);
  const half = (sense: 1 | -1, centre: Point) => {
    const own = ahead.map((lead) => sense * lead > 1e-9);
    const first = own.findIndex((is, at) => is && !own[(at + sides - 1) % sides]);
    const run = [...corners.slice(first), ...corners.slice(0, first)].slice(0, own.filter(Boolean).length);
    const ends = [
      { xM: sense * u.yM, yM: -sense * u.xM },
      { xM: -sense * u.yM, yM: sense * u.xM },
    ];
    return [...ends.slice(0, 1), ...run, ...ends.slice(1)].map(({ xM, yM }) => ({
      xM: centre.xM + xM,
      yM: centre.yM + yM,
    }));
  };
  return [...half(1, b), ...half(-1, a)];
}
