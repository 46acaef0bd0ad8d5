import { distance, type Point } from '../../shape/point.ts';
import { isPoint, type RouteWire, type Stretch } from '../route.ts';
import { terminalRoomM } from '../tracks.ts';
import type { SharedRoom } from './dress-grid.ts';

/** An end of a wire that another wire ends near to; `same`: in the same terminal. */
export interface SharedEnd extends Point {
  readonly same: boolean;
}

/** The wire's own ends that another wire ends near to. */
export function sharedEnds(wire: RouteWire, other: RouteWire): readonly SharedEnd[] {
  return [wire.from, wire.to].filter(isPoint).flatMap((end): SharedEnd[] => {
    const apartM = Math.min(...[other.from, other.to].filter(isPoint).map((far) => distance(far, end)));
    return apartM < terminalRoomM ? [{ xM: end.xM, yM: end.yM, same: apartM < 1e-6 }] : [];
  });
}

/** The room that a wire shares with a stretch of another about ends of both; `ends`: one at least. */
export class RoomAboutEnds implements SharedRoom {
  readonly #stretch: Stretch;
  readonly #ends: readonly SharedEnd[];

  constructor(stretch: Stretch, ends: readonly SharedEnd[]) {
    [this.#stretch, this.#ends] = [stretch, ends];
  }

  mayHave(along: Float64Array, piece: number, across: Float64Array, line: number): boolean {
    const { level, at, from, to } = this.#stretch;
    const atM = across[line] ?? 0;
    const firstM = along[piece] ?? 0;
    const lastM = along[piece + 1] ?? firstM;
    const isOnIt = Math.abs(atM - at) < 1e-6 && firstM < to && lastM > from;
    for (const { xM, yM, same } of this.#ends) {
      if (!same && isOnIt) continue;
      const asideM = atM - (level ? yM : xM);
      const endM = level ? xM : yM;
      if (isWithin(firstM - endM, asideM) && isWithin(lastM - endM, asideM)) return true;
    }
    return false;
  }
}

const [surelyM2, hardlyM2] = [terminalRoomM ** 2 * (1 - 1e-9), terminalRoomM ** 2 * (1 + 1e-9)];

/** True where something lies so far along and across within the room of a terminal; the root is taken only where it tells. */
function isWithin(alongM: number, acrossM: number): boolean {
  const squareM2 = alongM * alongM + acrossM * acrossM;
  if (squareM2 < surelyM2 || squareM2 > hardlyM2) return squareM2 < surelyM2;
  return Math.hypot(alongM, acrossM) < terminalRoomM;
}
