import { edgesOf, type Point, type Ring, ringArea, turn } from './point.ts';

/** The smallest convex ring round points, counter-clockwise (Andrew's monotone chain). */
export function hullOf(points: readonly Point[]): Ring {
  const sorted = points.toSorted((a, b) => a.xM - b.xM || a.yM - b.yM);
  const half = (run: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of run) {
      for (;;) {
        const [a, b] = [chain.at(-2), chain.at(-1)];
        if (!a || !b || turn(a, b, p) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

/** True where a ring has no inward corner. Counter-clockwise. */
function isConvex(ring: Ring): boolean {
  return ring.every((p, at) => {
    const [before, after] = [ring.at(at - 1) ?? p, ring[(at + 1) % ring.length] ?? p];
    return turn(before, p, after) >= -1e-15;
  });
}

/**
 * Convex rings that make up a simple ring: itself where it is convex, else its triangles (by ears), joined as long as
 * they stay convex.
 */
export function convexPieces(ring: Ring): readonly Ring[] {
  const forward = ringArea(ring) < 0 ? ring.toReversed() : ring;
  if (isConvex(forward)) return [forward];
  const pieces: Ring[] = [];
  for (const triangle of trianglesOf(forward)) {
    const at = pieces.findIndex((piece) => joined(piece, triangle) !== null);
    const whole = joined(pieces[at] ?? [], triangle);
    if (at >= 0 && whole) pieces[at] = whole;
    else pieces.push(triangle);
  }
  return pieces;
}

/** The hull of two pieces where it holds nothing beside them; else null. */
function joined(one: Ring, other: Ring): Ring | null {
  if (one.length === 0) return null;
  const whole = hullOf([...one, ...other]);
  const areaM2 = ringArea(one) + ringArea(other);
  return ringArea(whole) <= areaM2 * (1 + 1e-9) ? whole : null;
}

/** Ear clipping; what is left when no ear is found (a ring that touches itself) goes as it is. */
function trianglesOf(ring: Ring): Ring[] {
  const left = [...ring];
  const triangles: Ring[] = [];
  while (left.length > 3) {
    const at = left.findIndex((_, index) => isEar(left, index));
    if (at < 0) break;
    const ear = cornerOf(left, at);
    if (turn(...ear) > 0) triangles.push(ear);
    left.splice(at, 1);
  }
  if (left.length >= 3 && ringArea(left) > 0) triangles.push(hullOf(left));
  return triangles;
}

function cornerOf(ring: Ring, at: number): [Point, Point, Point] {
  const n = ring.length;
  const p = ring[at] ?? { xM: 0, yM: 0 };
  return [ring[(at + n - 1) % n] ?? p, p, ring[(at + 1) % n] ?? p];
}

function isEar(ring: Ring, at: number): boolean {
  const ear = cornerOf(ring, at);
  const twice = turn(...ear);
  if (twice < 0) return false;
  // A corner that is none is cut off without a triangle.
  return twice < 1e-18 || !ring.some((p) => !ear.includes(p) && isWithin(p, ear));
}

/** Strictly inside a convex ring. */
function isWithin(p: Point, ring: Ring): boolean {
  return edgesOf(ring).every(([a, b]) => turn(a, b, p) > 1e-15);
}
