import type { Side } from '../layout/item.ts';
import type { Point } from './point.ts';

/** Less than this is not told as a move along an axis, metres. */
export const toldM = 0.0002;

/** The side that one point lies to from another along an axis; null where it lies across both. */
export function sideOf(from: Point, to: Point): Side | null {
  const [xM, yM] = [to.xM - from.xM, to.yM - from.yM];
  if (Math.abs(xM) > toldM && Math.abs(yM) > toldM) return null;
  if (Math.abs(xM) > Math.abs(yM)) return xM < 0 ? 'left' : 'right';
  return yM < 0 ? 'bottom' : 'top';
}
