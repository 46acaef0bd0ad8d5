import { type Point, turn } from '../shape/point.ts';
import type { Route } from './route.ts';

/** A wire is led far where it is so many times as long as straight along x and y, and so much longer, metres (house judgement). */
const farTimes = 1.8;
const farMoreM = 0.25;

/** Quarter turns one way, what it turned back taken off, from which on a wire runs round something (house judgement). */
const roundQuarters = 3;

/** True for a wire that is led far round, or that runs round something by three quarters of a circle, as a curl does. */
export function isLedRound(route: Pick<Route, 'points' | 'lengthM'>): boolean {
  return isLedFar(route) || quartersRound(route) >= roundQuarters;
}

function isLedFar({ points, lengthM }: Pick<Route, 'points' | 'lengthM'>): boolean {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return false;
  const straightM = Math.abs(first.xM - last.xM) + Math.abs(first.yM - last.yM);
  return lengthM > farTimes * straightM && lengthM > straightM + farMoreM;
}

/** The most quarter turns one way between any two stretches of a route, what it turns back taken off. */
export function quartersRound({ points }: Pick<Route, 'points'>): number {
  let [sum, low, high, most] = [0, 0, 0, 0];
  for (let at = 1; at + 1 < points.length; at += 1) {
    sum += turnAt(points[at - 1], points[at], points[at + 1]);
    low = Math.min(low, sum);
    high = Math.max(high, sum);
    most = Math.max(most, sum - low, high - sum);
  }
  return most;
}

/** 1 where a way turns left, -1 where it turns right. */
function turnAt(a: Point | undefined, b: Point | undefined, c: Point | undefined): number {
  if (!a || !b || !c) return 0;
  return Math.sign(turn(a, b, c));
}
