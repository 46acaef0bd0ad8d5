import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DelayRequest, speakerDelays, speedOfSound } from '../../lib/audio/delay.ts';
import { isFault } from '../../lib/model/fault.ts';
import { outsideCheck } from '../outside-check.ts';

const inTextbook = outsideCheck('sound-textbook');
const apart = outsideCheck('arrivals');

function speed(airC: number): number {
  const found = speedOfSound(airC);
  if (isFault(found)) throw new Error(found.message);
  return found.value;
}

function delays(request: DelayRequest) {
  const found = speakerDelays(request);
  if (isFault(found)) throw new Error(found.message);
  return found;
}

describe('the speed of sound', () => {
  it('is 343.2 m/s at 20 C (ISO 9613-1)', () => {
    expect(speed(20)).toBeCloseTo(343.2, 9);
  });

  // The textbook form 331.3 sqrt(1 + t / 273.15) is an independent fit: the two agree within 0.01 %.
  it.each([-40, -20, 0, 10, 35, 60, 85])('agrees with the textbook form at %i C', (airC) => {
    const textbook = 331.3 * Math.sqrt(1 + airC / 273.15);
    expect(Math.abs(inTextbook.differs(speed(airC), textbook) / textbook - 1)).toBeLessThan(1e-4);
  });

  it.each([-41, 200, Number.NaN])('is refused at %f C', (airC) => {
    expect(speedOfSound(airC)).toMatchObject({ fault: 'air-temperature-unlikely' });
  });
});

describe('delays', () => {
  // By hand, at 20 C: 0.3432 m nearer is 1 ms, which is 48 samples at 48 kHz.
  it('bring the near speaker to the far one', () => {
    const request = {
      speakers: [
        { speaker: 'sub', distanceM: 2 },
        { speaker: 'left', distanceM: 2 - 0.3432 },
      ],
      airC: 20,
      sampleRateHz: 48_000,
    };
    const [sub, left] = delays(request);
    expect(sub).toMatchObject({ speaker: 'sub', delayMs: { value: 0 }, delaySamples: { value: 0 } });
    expect(left?.delayMs.value).toBeCloseTo(1, 9);
    expect(apart.differs(left?.delaySamples.value ?? 0, 48)).toBe(48);
    expect(left?.residueMs.value).toBeCloseTo(0, 9);
  });

  it('let every speaker arrive at one time, the farthest with none, whole samples at most half off', () => {
    const distances = fc.array(fc.double({ min: 0, max: 6, noNaN: true }), { minLength: 1, maxLength: 10 });
    const airC = fc.integer({ min: -20, max: 60 });
    fc.assert(
      fc.property(distances, airC, fc.constantFrom(44_100, 48_000, 96_000), (list, air, sampleRateHz) => {
        const speakers = list.map((distanceM, index) => ({ speaker: `s${index}`, distanceM }));
        const found = delays({ speakers, airC: air, sampleRateHz });
        const arrivals = found.map(
          ({ delayMs }, index) => delayMs.value + (1000 * (list[index] ?? 0)) / speed(air),
        );
        for (const arrival of arrivals)
          expect(apart.differs(arrival, arrivals[0] ?? 0)).toBeCloseTo(arrivals[0] ?? 0, 9);
        expect(Math.min(...found.map(({ delayMs }) => delayMs.value))).toBe(0);
        for (const { delayMs, delaySamples, residueMs } of found) {
          expect(Number.isInteger(delaySamples.value)).toBe(true);
          expect(Math.abs(residueMs.value)).toBeLessThanOrEqual(500 / sampleRateHz + 1e-9);
          expect((1000 * delaySamples.value) / sampleRateHz + residueMs.value).toBeCloseTo(delayMs.value, 9);
        }
      }),
    );
  });

  it('of no speakers are none', () => {
    expect(speakerDelays({ speakers: [], airC: 20, sampleRateHz: 48_000 })).toEqual([]);
  });

  const left = { speaker: 'left', distanceM: 1 };
  it.each([
    ['speaker-twice', { speakers: [left, left], airC: 20, sampleRateHz: 48_000 }],
    ['distance-unclear', { speakers: [{ speaker: 'left', distanceM: -1 }], airC: 20, sampleRateHz: 48_000 }],
    [
      'distance-unclear',
      { speakers: [{ speaker: 'left', distanceM: Number.NaN }], airC: 20, sampleRateHz: 48_000 },
    ],
    ['sample-rate-unclear', { speakers: [left], airC: 20, sampleRateHz: 0 }],
    ['air-temperature-unlikely', { speakers: [left], airC: 300, sampleRateHz: 48_000 }],
  ] as const)('%s is named', (fault, request) => {
    expect(speakerDelays(request)).toMatchObject({ fault });
  });
});
