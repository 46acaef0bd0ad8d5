import { distance, type Point, turn } from '../shape/point.ts';
import type { Route } from './route.ts';

/** A leg of a route that is short for its bends. */
export interface TightBend {
  readonly at: Point;
  /** The radius that it leaves, metres. */
  readonly radiusM: number;
  /** At one end of the leg, or at both. */
  readonly bends: 1 | 2;
}

interface Leg extends TightBend {
  readonly lengthM: number;
  /** Index of the leg along the route. */
  readonly nth: number;
}

/** Half a millimetre is no bend that a hand could tell. */
const handM = 0.0005;

/** The legs of a route that begin or end in a bend, with what each leaves its bends: its length, or half of it. */
function bentLegs({ points }: Pick<Route, 'points'>): Leg[] {
  return points.slice(1).flatMap((b, nth): Leg[] => {
    const a = points[nth];
    if (!a || points.length < 3) return [];
    const bends = nth > 0 && nth < points.length - 2 ? 2 : 1;
    const lengthM = distance(a, b);
    return [{ at: nth > 0 ? a : b, radiusM: lengthM / bends, bends, lengthM, nth }];
  });
}

const tightestOf = (legs: readonly Leg[], leastM: number): TightBend | null => {
  const [tightest] = legs.toSorted((a, b) => a.radiusM - b.radiusM);
  return tightest && tightest.radiusM < leastM - handM ? tightest : null;
};

/**
 * The leg of a route that is too short for its bends, and the radius that it leaves; null where all have room to half a
 * millimetre. A jog, two bends that turn opposite ways d apart, is eased over the straight wire l before and behind it:
 * two arcs that run into one another have a radius of (d^2 + l^2) / (4 d), l both together (plane geometry).
 */
export function tightestBend(route: Pick<Route, 'points'>, bendRadiusM: number): TightBend | null {
  const legs = bentLegs(route);
  // Most ways have room for all their bends as they lie.
  if (!tightestOf(legs, bendRadiusM)) return null;
  return tightestOf(eased(route, legs), bendRadiusM);
}

/** The ends of a way at which its wire goes straight on, over the edge of the board. */
export interface OpenEnds {
  readonly from: boolean;
  readonly to: boolean;
}

/**
 * The bend of a route that kinks it: that stays below a radius however the wire is eased along its way, jogs as by
 * `tightestBend`; null where none does. Where a wire leaves the board, it has all the way behind the edge.
 */
export function kinkedBend(
  route: Pick<Route, 'points'>,
  kinkRadiusM: number,
  open: OpenEnds = { from: false, to: false },
): TightBend | null {
  const last = route.points.length - 2;
  const isOpen = ({ nth }: Leg): boolean => (nth === 0 && open.from) || (nth === last && open.to);
  const legs = bentLegs(route).map((leg) => (isOpen(leg) ? { ...leg, radiusM: Infinity } : leg));
  return tightestOf(eased(route, legs), kinkRadiusM);
}

function eased(route: Pick<Route, 'points'>, legs: readonly Leg[]): Leg[] {
  return legs.map((leg) => ({ ...leg, radiusM: Math.max(leg.radiusM, easedM(route, leg, legs)) }));
}

function easedM(
  { points }: Pick<Route, 'points'>,
  { nth, bends, lengthM }: Leg,
  legs: readonly Leg[],
): number {
  const [before, behind] = [legs[nth - 1], legs[nth + 1]];
  if (bends === 1 || !before || !behind || !isJog(points.slice(nth - 1, nth + 3))) return 0;
  const straightM = 2 * Math.min(before.radiusM, behind.radiusM);
  return (lengthM ** 2 + straightM ** 2) / (4 * lengthM);
}

/** True for four points of a way that turns one way and back the other. */
function isJog([a, b, c, d]: readonly Point[]): boolean {
  if (!a || !b || !c || !d) return false;
  return turn(a, b, c) * turn(b, c, d) < 0;
}
