import { boxOf, edgesOf, insideRing, pointToRing, type Ring, segmentToSegment } from './point.ts';
import { intersection, regionArea, regionOf } from './region.ts';

/** The least distance between the lines of two rings, metres. */
export function lineGapM(one: Ring, other: Ring): number {
  const edges = edgesOf(other);
  return Math.min(
    ...edgesOf(one).map(([a, b]) => Math.min(...edges.map(([c, d]) => segmentToSegment(a, b, c, d)))),
  );
}

/** How deep the corners of one ring stand inside the other, metres. */
function cornersInsideM(one: Ring, other: Ring): number {
  return one
    .filter((p) => insideRing(p, other))
    .reduce((most, p) => Math.max(most, pointToRing(p, other)), 0);
}

/**
 * Room between two rings, metres: the least distance where they are apart; below zero where they overlap, by
 * the greatest depth of a corner of one in the other (or the narrow side of what they share).
 */
export function gapM(one: Ring, other: Ring): number {
  const common = intersection(regionOf(one), regionOf(other));
  if (regionArea(common) < 1e-10) return lineGapM(one, other);
  const depth = Math.max(cornersInsideM(one, other), cornersInsideM(other, one));
  if (depth > 0) return -depth;
  const box = boxOf(common.flatMap(({ outer }) => outer));
  return -Math.min(box.maxX - box.minX, box.maxY - box.minY);
}

/**
 * Room of a ring inside a space, metres: the least distance to the space's line; below zero where it reaches
 * out, by the greatest distance of a corner outside, or of a corner of the space that stands in the ring.
 */
export function roomInsideM(ring: Ring, space: Ring): number {
  const out = ring.filter((p) => !insideRing(p, space) && pointToRing(p, space) > 1e-9);
  const outM = out.reduce((most, p) => Math.max(most, pointToRing(p, space)), 0);
  const biteM = cornersInsideM(space, ring);
  const most = Math.max(outM, biteM);
  return most > 1e-9 ? -most : lineGapM(ring, space);
}
