import { type TestTone, type TonePath, testTone } from '../../lib/audio/test-tone.ts';
import { isFault } from '../../lib/model/fault.ts';

/** A path without filters, whose usual tone is 1,000 Hz. */
export const path: TonePath = {
  channel: 'front',
  usualHz: 1000,
  overlapDb: 0,
  filters: [],
  peaks: [],
  lowestDb: 3,
  nearDb: 0.5,
};

export const found = (change: Partial<TonePath>) => testTone({ ...path, ...change });

/** Its test tone, with something changed. */
export function tone(change: Partial<TonePath>): TestTone {
  const result = found(change);
  if (isFault(result)) throw new Error(result.message);
  return result;
}

export const hz = (change: Partial<TonePath>) => tone(change).frequencyHz.value;
