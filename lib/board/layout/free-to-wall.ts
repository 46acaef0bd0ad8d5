import { edgesOf, type Point, type Ring } from '../shape/point.ts';
import type { Body, Side } from './item.ts';

/** Quarter turns that bring what a side faces to the right. */
const quarters: Readonly<Record<Side, number>> = { right: 0, top: 3, left: 2, bottom: 1 };

function turned({ xM, yM }: Point, by: number): Point {
  if (by === 1) return { xM: -yM, yM: xM };
  if (by === 2) return { xM: -xM, yM: -yM };
  return by === 3 ? { xM: yM, yM: -xM } : { xM, yM };
}

/**
 * Free distance from a side of a body straight out to the line of a ring, over the whole width of the side, metres: 0
 * where the line crosses the side, infinite where nothing of it lies before the side.
 */
export function freeToRingM(body: Body, side: Side, ring: Ring): number {
  const by = quarters[side];
  const [a, b] = [turned({ xM: body.minX, yM: body.minY }, by), turned({ xM: body.maxX, yM: body.maxY }, by)];
  const frontM = Math.max(a.xM, b.xM);
  const [lowM, highM] = [Math.min(a.yM, b.yM) + 1e-6, Math.max(a.yM, b.yM) - 1e-6];
  const reached = edgesOf(ring.map((p) => turned(p, by))).flatMap(([p, q]) => nearestM(p, q, lowM, highM));
  const before = reached.filter((xM) => xM >= frontM - 1e-6).map((xM) => Math.max(0, xM - frontM));
  return Math.min(Infinity, ...before);
}

/** The least and the greatest x of what of a segment lies between two heights. */
function nearestM(p: Point, q: Point, lowM: number, highM: number): number[] {
  if (Math.max(p.yM, q.yM) < lowM || Math.min(p.yM, q.yM) > highM) return [];
  if (Math.abs(q.yM - p.yM) < 1e-12) return [p.xM, q.xM];
  const at = (yM: number) => {
    const share = Math.min(1, Math.max(0, (yM - p.yM) / (q.yM - p.yM)));
    return p.xM + share * (q.xM - p.xM);
  };
  return [at(lowM), at(highM)];
}
