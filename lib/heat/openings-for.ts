import { type Opening, openingFlow } from './air-flow.ts';
import { fanFor, type WarmCavity } from './cavity-air.ts';

/** What a cavity has room for, metres. */
export interface OpeningRoom {
  /** The widest and the highest upright opening. */
  readonly widthM: number;
  readonly heightM: number;
  /** Steps in which they are cut. */
  readonly stepM: number;
}

/**
 * Openings of one size, as wide as there is room, that keep a cavity at a rise over the air outside beside its walls, its
 * fan and the openings that it has. What one passes grows with its height to the power of 1.5, so that their least
 * height follows from what one of 1 m passes (`openingFlow`); it is rounded up to a whole step. Null where that is
 * higher than there is room.
 */
export function openingsFor(
  cavity: WarmCavity,
  riseK: number,
  room: OpeningRoom,
  count: number,
): Opening | null {
  const missingM3S = fanFor(cavity, riseK) - cavity.fanM3S;
  if (!(riseK > 0) || !Number.isFinite(missingM3S)) return null;
  const { stepM } = room;
  const widthM = Math.floor(room.widthM / stepM + 1e-9) * stepM;
  const ofMetreM3S = openingFlow({ widthM, heightM: 1 }, riseK, cavity.outsideC);
  const leastM = (missingM3S / count / ofMetreM3S) ** (2 / 3);
  const heightM = Math.ceil(leastM / stepM - 1e-9) * stepM;
  return widthM > 0 && heightM > 0 && heightM <= room.heightM + 1e-9 ? { widthM, heightM } : null;
}
