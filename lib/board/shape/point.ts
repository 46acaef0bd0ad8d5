/** A point on a board, metres from its datum: x right, y up, seen from the mounting side. */
export interface Point {
  readonly xM: number;
  readonly yM: number;
}

/** A closed run of straight edges: corners in order, the first not repeated at the end. */
export type Ring = readonly Point[];

/** Distance between two points, metres. */
export function distance(a: Point, b: Point): number {
  return Math.hypot(b.xM - a.xM, b.yM - a.yM);
}

/** Twice the signed area of a triangle, m2: above zero where c lies left of a to b. */
export function turn(a: Point, b: Point, c: Point): number {
  return (b.xM - a.xM) * (c.yM - a.yM) - (b.yM - a.yM) * (c.xM - a.xM);
}

/** The point of the segment a-b that is nearest to p. */
export function nearestOnSegment(p: Point, a: Point, b: Point): Point {
  const dx = b.xM - a.xM;
  const dy = b.yM - a.yM;
  const square = dx * dx + dy * dy;
  if (square === 0) return a;
  const share = Math.min(1, Math.max(0, ((p.xM - a.xM) * dx + (p.yM - a.yM) * dy) / square));
  return { xM: a.xM + share * dx, yM: a.yM + share * dy };
}

/** True where the inner parts of segments a-b and c-d cross in one point. Touching ends do not count. */
export function segmentsCross(a: Point, b: Point, c: Point, d: Point): boolean {
  // Most pairs of a search lie wide apart: their boxes tell so without a product.
  if (Math.max(a.xM, b.xM) < Math.min(c.xM, d.xM) || Math.max(c.xM, d.xM) < Math.min(a.xM, b.xM))
    return false;
  if (Math.max(a.yM, b.yM) < Math.min(c.yM, d.yM) || Math.max(c.yM, d.yM) < Math.min(a.yM, b.yM))
    return false;
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

/** Distance from a point to a segment, metres. Makes no objects: searches call it very often. */
export function pointToSegment(p: Point, a: Point, b: Point): number {
  const dx = b.xM - a.xM;
  const dy = b.yM - a.yM;
  const square = dx * dx + dy * dy;
  const along = (p.xM - a.xM) * dx + (p.yM - a.yM) * dy;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, along / square));
  return Math.sqrt((p.xM - a.xM - share * dx) ** 2 + (p.yM - a.yM - share * dy) ** 2);
}

/** Distance between two segments, metres; 0 where they meet. */
export function segmentToSegment(a: Point, b: Point, c: Point, d: Point): number {
  if (segmentsCross(a, b, c, d)) return 0;
  return Math.min(
    pointToSegment(a, c, d),
    pointToSegment(b, c, d),
    pointToSegment(c, a, b),
    pointToSegment(d, a, b),
  );
}

/** True where the boxes of two segments are at least as far apart as a reach, so that the segments are too. */
export function segmentsApart(a: Point, b: Point, c: Point, d: Point, reachM: number): boolean {
  return (
    Math.min(c.xM, d.xM) - Math.max(a.xM, b.xM) >= reachM ||
    Math.min(a.xM, b.xM) - Math.max(c.xM, d.xM) >= reachM ||
    Math.min(c.yM, d.yM) - Math.max(a.yM, b.yM) >= reachM ||
    Math.min(a.yM, b.yM) - Math.max(c.yM, d.yM) >= reachM
  );
}

/** The edges of a ring as pairs of points. */
export function edgesOf(ring: Ring): readonly (readonly [Point, Point])[] {
  return ring.flatMap((a, at) => {
    const b = ring[(at + 1) % ring.length];
    return b ? [[a, b] as const] : [];
  });
}

/** True where p lies inside the ring (even-odd rule); on the line itself either answer may come. */
export function insideRing(p: Point, ring: Ring): boolean {
  let inside = false;
  let a = ring.at(-1) ?? p;
  for (const b of ring) {
    if (a.yM > p.yM !== b.yM > p.yM && p.xM < a.xM + ((p.yM - a.yM) / (b.yM - a.yM)) * (b.xM - a.xM))
      inside = !inside;
    a = b;
  }
  return inside;
}

/** Distance from a point to the line of a ring, metres. */
export function pointToRing(p: Point, ring: Ring): number {
  return Math.min(...edgesOf(ring).map(([a, b]) => pointToSegment(p, a, b)));
}

/** Signed area of a ring, m2: above zero counter-clockwise (shoelace formula). */
export function ringArea(ring: Ring): number {
  return edgesOf(ring).reduce((sum, [a, b]) => sum + (a.xM * b.yM - b.xM * a.yM) / 2, 0);
}

/** The smallest upright rectangle round points. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The box of a list of points. */
export function boxOf(points: readonly Point[]): Box {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const { xM, yM } of points) {
    box.minX = Math.min(box.minX, xM);
    box.minY = Math.min(box.minY, yM);
    box.maxX = Math.max(box.maxX, xM);
    box.maxY = Math.max(box.maxY, yM);
  }
  return box;
}

/** The square about a round thing. */
export function squareAbout({ xM, yM }: Point, radiusM: number): Box {
  return { minX: xM - radiusM, maxX: xM + radiusM, minY: yM - radiusM, maxY: yM + radiusM };
}

/** A box as a ring, counter-clockwise from its low corner. */
export function ringOfBox({ minX, minY, maxX, maxY }: Box): Ring {
  return [
    { xM: minX, yM: minY },
    { xM: maxX, yM: minY },
    { xM: maxX, yM: maxY },
    { xM: minX, yM: maxY },
  ];
}

/** Distance from a point to a box, metres; 0 inside it. */
export function distanceToBox(p: Point, box: Box): number {
  const dx = Math.max(box.minX - p.xM, 0, p.xM - box.maxX);
  const dy = Math.max(box.minY - p.yM, 0, p.yM - box.maxY);
  return Math.hypot(dx, dy);
}
