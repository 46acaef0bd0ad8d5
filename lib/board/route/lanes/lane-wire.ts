import type { Point } from '../../shape/point.ts';
import type { Leg } from './leg.ts';
import type { Walls } from './walls.ts';

/** A wire that gets lanes: it begins at a terminal, and ends at another or over a side of the board. */
export interface LaneWire {
  readonly from: Point;
  readonly to: Point | { readonly exitSide: number };
  readonly diameterM: number;
  readonly bendRadiusM: number;
}

/** A wire with its legs as they lie. */
export interface LaidLegs {
  readonly wire: LaneWire;
  readonly legs: readonly Leg[];
  /** Where each leg lies across (m). */
  readonly atM: readonly number[];
}

/** The number that a point has across a level or an upright leg. */
export function across({ xM, yM }: Point, level: boolean): number {
  return level ? yM : xM;
}

/** From where to where a leg runs (m), the way that its wire goes. */
export function endsOf({ wire, legs, atM }: LaidLegs, nth: number, walls: Walls): readonly [number, number] {
  const level = legs[nth]?.level ?? true;
  const endM = () =>
    'exitSide' in wire.to ? exitLineM(walls, wire.to.exitSide, atM[nth] ?? 0) : across(wire.to, !level);
  return [atM[nth - 1] ?? across(wire.from, !level), atM[nth + 1] ?? endM()];
}

/** The points that a wire runs through. */
export function pointsOf(laid: LaidLegs, walls: Walls): Point[] {
  return [
    laid.wire.from,
    ...laid.legs.map(({ level }, nth): Point => {
      const [atM, endM] = [laid.atM[nth] ?? 0, endsOf(laid, nth, walls)[1]];
      return level ? { xM: endM, yM: atM } : { xM: atM, yM: endM };
    }),
  ];
}

/** Where a line across a side of the board comes to its edge (m). */
export function exitLineM({ edges }: Walls, side: number, atM: number): number {
  const level = (side & 1) === 0;
  let furthestM = side < 2 ? -Infinity : Infinity;
  for (const { a, b, isOuter } of edges) {
    const [p, q] = level ? [a.yM, b.yM] : [a.xM, b.xM];
    if (!isOuter || p > atM === q > atM) continue;
    const [r, s] = level ? [a.xM, b.xM] : [a.yM, b.yM];
    const hitM = r + ((atM - p) / (q - p)) * (s - r);
    furthestM = side < 2 ? Math.max(furthestM, hitM) : Math.min(furthestM, hitM);
  }
  return furthestM;
}
