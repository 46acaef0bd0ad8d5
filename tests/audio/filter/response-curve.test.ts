import { describe, expect, it } from 'vitest';
import type { Response } from '../../../lib/audio/filter/complex.ts';
import { levelDb, type Path, pathResponse } from '../../../lib/audio/filter/filter-response.ts';
import { frequencies, type Sampling, sumResponse } from '../../../lib/audio/filter/response-curve.ts';
import { subsonicCorner } from '../../../lib/audio/filter/subsonic-corner.ts';
import { isFault } from '../../../lib/model/fault.ts';

/** From 10 Hz to 20 kHz, 24 points an octave and both ends. */
const audibleBand: Sampling = { fromHz: 10, toHz: 20_000, points: 265 };

/** Level and phase of the sum of paths at the frequencies of a range. */
function sumOf(paths: readonly Path[], sampling = audibleBand) {
  const sum = sumResponse(
    paths.map((path): Response => {
      const response = pathResponse(path);
      if (isFault(response)) throw new Error(response.message);
      return response;
    }),
  );
  return frequencies(sampling).map((frequencyHz) => {
    const { re, im } = sum(frequencyHz);
    return { levelDb: levelDb({ re, im }), phaseDeg: (Math.atan2(im, re) * 180) / Math.PI };
  });
}

const flat = (id: string, rest: Partial<Path> = {}): Path => ({ id, filters: [], ...rest });
const at = (fromHz: number) => ({ fromHz, toHz: 2 * fromHz, points: 2 });

describe('the sum of paths', () => {
  // Two equal sources in phase are 20 log10(2) = 6.0206 dB above one, in opposite phase nothing.
  it('of two equal ones is 6.0206 dB, and nothing with one reversed', () => {
    expect(sumOf([flat('left'), flat('right')])[0]?.levelDb).toBeCloseTo(6.0206, 4);
    expect(sumOf([flat('left'), flat('right', { reversed: true })])[0]?.levelDb).toBe(-200);
  });

  // A delay of 1 ms is half a wave at 500 Hz and a whole one at 1 kHz.
  it('has its comb where the delay puts it', () => {
    const [half, whole] = sumOf([flat('left'), flat('right', { delayMs: 1 })], at(500));
    expect(half?.levelDb).toBeLessThan(-190);
    expect(whole?.levelDb).toBeCloseTo(6.0206, 4);
  });

  it('turns the phase of a delayed path by 360 degrees times delay times frequency', () => {
    const [quarter] = sumOf([flat('left', { delayMs: 2.5 })], at(100));
    expect(quarter?.phaseDeg).toBeCloseTo(-90, 9);
  });

  it('counts the gain of a path', () => {
    expect(sumOf([flat('left', { gainDb: -6 })])[5]?.levelDb).toBeCloseTo(-6, 9);
  });
});

describe('a curve', () => {
  it('runs from 10 Hz to 20 kHz, each step the same ratio', () => {
    const list = frequencies(audibleBand);
    expect([list[0], list.at(-1), list.length]).toEqual([10, 20_000, 265]);
    const ratio = (list[1] ?? 0) / (list[0] ?? 1);
    for (const [index, frequencyHz] of list.slice(1).entries())
      expect(frequencyHz / (list[index] ?? 1)).toBeCloseTo(ratio, 9);
  });

  it('has finite points at every frequency, far outside the band too', () => {
    const steep: Path = {
      id: 'sub',
      filters: [{ pass: 'low-pass', type: 'butterworth', order: 8, cornerHz: 20 }],
    };
    for (const point of sumOf([steep], { fromHz: 1e-3, toHz: 1e9, points: 50 })) {
      expect(point.levelDb).toBeGreaterThanOrEqual(-200);
      expect(Number.isFinite(point.phaseDeg)).toBe(true);
    }
  });
});

describe('the subsonic filter of a ported enclosure', () => {
  // Common practice, no source: 0.7 to 0.8 of the tuning, 24 dB per octave.
  it('of 40 Hz tuning is at 28 to 32 Hz', () => {
    const corner = subsonicCorner('box', 40, { from: 0.7, to: 0.8 });
    if (isFault(corner)) throw new Error(corner.message);
    expect([corner.fromHz.value, corner.toHz.value, corner.order]).toEqual([28, 32, 4]);
    expect(corner.fromHz.trace.mark).toBe('cp');
  });

  it('needs the tuning', () => {
    expect(subsonicCorner('box', 0, { from: 0.7, to: 0.8 })).toMatchObject({
      fault: 'tuning-unknown',
      of: ['box'],
    });
  });
});
