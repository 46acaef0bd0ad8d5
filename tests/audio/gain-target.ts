import { type GainRequest, gainTarget } from '../../lib/audio/gain.ts';
import { isFault } from '../../lib/model/fault.ts';

/** A channel of 100 W into 4 ohm, flat, at its rated supply. */
export const front: GainRequest = {
  channel: 'front',
  loadOhm: 4,
  powerW: 100,
  ratedSupplyV: 14.4,
  supplyV: 14.4,
  regulated: false,
  overlapDb: 0,
  pathDb: 0,
};

/** What its gain is set for, with something changed. */
export function target(change: Partial<GainRequest> = {}) {
  const found = gainTarget({ ...front, ...change });
  if (isFault(found)) throw new Error(found.message);
  return found;
}
