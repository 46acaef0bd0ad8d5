import type { Edge } from '../../model/vocabulary.ts';
import { distance, edgesOf, type Point, pointToSegment, type Ring, ringArea } from './point.ts';

/** How far a point of a side may be, metres; alike where it is known which point. */
export interface ToSide {
  readonly leastM: number;
  readonly mostM: number;
}

/**
 * Straight distance from a point to a side of a ring, metres. `atM` tells where along the side: from the left on the top
 * and the bottom, from below on the left and the right; beyond the side it is its end. Left out: from the nearest point
 * of the side to the farthest. Plane geometry.
 */
export function toSideM(ring: Ring, side: Edge, from: Point, atM?: number): ToSide {
  const distances = sidePoints(ring, side, atM).map((p) => distance(from, p));
  const leastM =
    atM === undefined
      ? Math.min(...edgesFacing(ring, side).map(([a, b]) => pointToSegment(from, a, b)))
      : Math.min(...distances);
  return { leastM, mostM: Math.max(...distances) };
}

/** The points of a side of which one is farthest from anywhere: the ends of its edges, or what lies `atM` along it (m). */
export function sidePoints(ring: Ring, side: Edge, atM?: number): readonly Point[] {
  const edges = edgesFacing(ring, side);
  if (atM === undefined) return edges.flat();
  const along: 'xM' | 'yM' = side === 'top' || side === 'bottom' ? 'xM' : 'yM';
  const places = edges.flat().map((p) => p[along]);
  const wantedM = Math.min(Math.max(atM, Math.min(...places)), Math.max(...places));
  const met = edges.flatMap(([a, b]) => pointAt(a, b, along, wantedM));
  // Where an edge faces the side in two places at one height, which of them is not told.
  return met.length > 0 ? met : edges.flat();
}

/** The edges of a ring that look towards a side more than to either of its neighbours; all where none does. */
function edgesFacing(ring: Ring, side: Edge): readonly (readonly [Point, Point])[] {
  const turn = ringArea(ring) < 0 ? -1 : 1;
  const facing = edgesOf(ring).filter(([a, b]) => {
    const [outX, outY] = [(b.yM - a.yM) * turn, (a.xM - b.xM) * turn];
    const towards = { left: -outX, right: outX, top: outY, bottom: -outY }[side];
    const across = Math.abs(side === 'left' || side === 'right' ? outY : outX);
    return towards > 0 && towards >= across - 1e-12;
  });
  return facing.length > 0 ? facing : edgesOf(ring);
}

/** The points of a segment at a place along an axis: both ends of one that lies there as a whole. */
function pointAt(a: Point, b: Point, along: 'xM' | 'yM', wantedM: number): readonly Point[] {
  const [least, most] = [Math.min(a[along], b[along]), Math.max(a[along], b[along])];
  if (wantedM < least - 1e-9 || wantedM > most + 1e-9) return [];
  if (most - least < 1e-9) return [a, b];
  const share = (wantedM - a[along]) / (b[along] - a[along]);
  return [{ xM: a.xM + share * (b.xM - a.xM), yM: a.yM + share * (b.yM - a.yM) }];
}
