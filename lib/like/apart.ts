import {
  type Box,
  insideRing,
  type Point,
  pointToSegment,
  type Ring,
  ringOfBox,
  segmentsCross,
} from '../board/shape/point.ts';

/** What is asked where two lines cross and no corner tells by how much: any move, however small, may do. */
const crossingM = 1e-6;

/** How deep a point lies inside a ring, metres; below zero by how far it is outside. Makes no objects: searches call it very often. */
export function depthIn(p: Point, ring: Ring): number {
  let toLineM = Number.POSITIVE_INFINITY;
  let a = ring.at(-1) ?? p;
  for (const b of ring) {
    toLineM = Math.min(toLineM, pointToSegment(p, a, b));
    a = b;
  }
  return insideRing(p, ring) ? toLineM : -toLineM;
}

function cross(one: Ring, other: Ring): boolean {
  let a = one.at(-1);
  for (const b of one) {
    let c = other.at(-1);
    for (const d of other) {
      if (a && c && segmentsCross(a, b, c, d)) return true;
      c = d;
    }
    a = b;
  }
  return false;
}

/**
 * How far a ring would have to be moved at least to lie inside another with some room all round, metres; 0 or below
 * where it does. The corners of both tell it: two lines are nearest to each other at a corner of one.
 */
export function moveInsideM(ring: Ring, space: Ring, roomM: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const p of ring) most = Math.max(most, roomM - depthIn(p, space));
  for (const p of space) most = Math.max(most, roomM + depthIn(p, ring));
  return most <= crossingM && cross(ring, space) ? crossingM : most;
}

/** How far a ring would have to be moved at least to lie outside another with some room between, metres; 0 or below where it does. */
export function moveApartM(ring: Ring, other: Ring, roomM: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const p of ring) most = Math.max(most, roomM + depthIn(p, other));
  for (const p of other) most = Math.max(most, roomM + depthIn(p, ring));
  return most <= crossingM && cross(ring, other) ? crossingM : most;
}

/** The same for two upright rectangles. */
export function moveBoxesApartM(a: Box, b: Box, roomM: number): number {
  const dx = Math.max(b.minX - a.maxX, a.minX - b.maxX);
  const dy = Math.max(b.minY - a.maxY, a.minY - b.maxY);
  return roomM - (dx > 0 && dy > 0 ? Math.hypot(dx, dy) : Math.max(dx, dy));
}

/** How far an upright rectangle would have to be moved at least to lie inside a ring, metres. */
export function moveBoxInsideM(box: Box, space: Ring, roomM: number): number {
  return moveInsideM(ringOfBox(box), space, roomM);
}
