import { distance, pointToSegment, type Ring, ringArea } from './point.ts';

/** Corners nearer to each other than this are one, metres. */
const sameM = 2e-7;
/** A corner this near to the line between its neighbours is none, metres. */
const inLineM = 1e-8;

/**
 * A ring without doubled corners and corners in line, begun at its lowest left corner, counter-clockwise
 * (`sense` 1) or clockwise (-1): the same shape is always written the same way.
 */
export function cleanRing(ring: Ring, sense: 1 | -1): Ring {
  const apart = ring.filter((p, at) => distance(p, ring[(at + 1) % ring.length] ?? p) > sameM);
  const kept = apart.filter((p, at) => {
    const before = apart[(at + apart.length - 1) % apart.length] ?? p;
    const after = apart[(at + 1) % apart.length] ?? p;
    return pointToSegment(p, before, after) > inLineM;
  });
  const turned = Math.sign(ringArea(kept)) === sense ? kept : kept.toReversed();
  const first = turned.reduce((best, p, at) => {
    const other = turned[best];
    if (!other) return at;
    return p.yM < other.yM || (p.yM === other.yM && p.xM < other.xM) ? at : best;
  }, 0);
  return [...turned.slice(first), ...turned.slice(0, first)];
}
