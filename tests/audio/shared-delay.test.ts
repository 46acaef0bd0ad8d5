import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { speakerDelays } from '../../lib/audio/delay.ts';
import { sharedDelay } from '../../lib/audio/shared-delay.ts';
import { isFault } from '../../lib/model/fault.ts';

function shared(distancesM: readonly number[]) {
  const delays = speakerDelays({
    speakers: distancesM.map((distanceM, index) => ({ speaker: `s${index}`, distanceM })),
    airC: 20,
    sampleRateHz: 96_000,
  });
  if (isFault(delays)) throw new Error(delays.message);
  return sharedDelay(delays, { sampleRateHz: 96_000, speedMPerS: 343.2 });
}

describe('the one delay of speakers on one output', () => {
  // ISO 9613-1: 343.2 m/s at 20 C, so that 3.432 m are 10 ms. By hand: of 0, 4 and 10 ms the middle is 5 ms.
  it('lies half-way between what the nearest and the farthest ask for', () => {
    const found = shared([3.432, 2.0592, 0]);
    expect(found.delayMs.value).toBeCloseTo(5, 9);
    expect(found.delaySamples.value).toBe(480);
    expect(found.off.map(({ offMs }) => offMs)).toEqual([
      expect.closeTo(5, 9),
      expect.closeTo(1, 9),
      expect.closeTo(-5, 9),
    ]);
  });

  it('leaves each off by the way of the sound: half of the difference for two', () => {
    const distance = fc.double({ min: 0.2, max: 6, noNaN: true });
    fc.assert(
      fc.property(distance, distance, (nearM, farM) => {
        const { off } = shared([nearM, farM]);
        for (const { offM } of off) expect(Math.abs(offM)).toBeCloseTo(Math.abs(nearM - farM) / 2, 9);
      }),
    );
  });
});
