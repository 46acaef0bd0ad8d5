import { type PlacedItem, planGapM } from './placed.ts';

/** The air that a part asks for over its face, else at any side, and lacks up to one over it; null where it lacks none. */
export function missingAirOver(
  { body, rooms, airOverM }: PlacedItem,
  upper: PlacedItem,
): { readonly freeM: number; readonly neededM: number } | null {
  const freeM = upper.body.minZ - body.maxZ;
  if (freeM < -1e-9 || planGapM(body, upper.body) >= -1e-9) return null;
  const neededM = airOverM ?? Math.max(0, ...Object.values(rooms).map(({ airM = 0 }) => airM));
  return freeM >= neededM - 1e-9 ? null : { freeM, neededM };
}
