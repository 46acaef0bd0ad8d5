import { describe, expect, it } from 'vitest';
import { isFault } from '../../lib/audio/fault.ts';
import type { Path } from '../../lib/audio/filters.ts';
import { audibleBand, type Curves, frequencies, responseCurves } from '../../lib/audio/response-curve.ts';
import { subsonicCorner } from '../../lib/audio/subsonic-corner.ts';

function curves(paths: readonly Path[], sampling = audibleBand): Curves {
  const found = responseCurves(paths, sampling);
  if (isFault(found)) throw new Error(found.message);
  return found;
}

const flat = (id: string, rest: Partial<Path> = {}): Path => ({ id, filters: [], ...rest });
const at = (fromHz: number) => ({ fromHz, toHz: 2 * fromHz, points: 2 });

describe('the sum of paths', () => {
  // Two equal sources in phase are 20 log10(2) = 6.0206 dB above one, in opposite phase nothing.
  it('of two equal ones is 6.0206 dB, and nothing with one reversed', () => {
    expect(curves([flat('left'), flat('right')]).sum[0]?.levelDb).toBeCloseTo(6.0206, 4);
    expect(curves([flat('left'), flat('right', { reversed: true })]).sum[0]?.levelDb).toBe(-200);
  });

  // A delay of 1 ms is half a wave at 500 Hz and a whole one at 1 kHz.
  it('has its comb where the delay puts it', () => {
    const [half, whole] = curves([flat('left'), flat('right', { delayMs: 1 })], at(500)).sum;
    expect(half?.levelDb).toBeLessThan(-190);
    expect(whole?.levelDb).toBeCloseTo(6.0206, 4);
  });

  it('turns the phase of a delayed path by 360 degrees times delay times frequency', () => {
    const [quarter] = curves([flat('left', { delayMs: 2.5 })], at(100)).sum;
    expect(quarter?.phaseDeg).toBeCloseTo(-90, 9);
  });

  it('counts the gain of a path', () => {
    expect(curves([flat('left', { gainDb: -6 })]).sum[5]?.levelDb).toBeCloseTo(-6, 9);
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
    for (const point of curves([steep], { fromHz: 1e-3, toHz: 1e9, points: 50 }).sum) {
      expect(point.levelDb).toBeGreaterThanOrEqual(-200);
      expect(Number.isFinite(point.phaseDeg)).toBe(true);
    }
  });

  it.each([
    { fromHz: 0, toHz: 100, points: 10 },
    { fromHz: 100, toHz: 100, points: 10 },
    { fromHz: 10, toHz: 100, points: 1 },
    { fromHz: 10, toHz: Number.POSITIVE_INFINITY, points: 10 },
  ])('without a range is named: %o', (sampling) => {
    expect(responseCurves([flat('left')], sampling)).toMatchObject({ fault: 'curve-range-unclear' });
  });
});

describe('the subsonic filter of a ported enclosure', () => {
  // Common practice, no source: 0.7 to 0.8 of the tuning, 24 dB per octave.
  it('of 40 Hz tuning is at 28 to 32 Hz', () => {
    const corner = subsonicCorner('box', 40);
    if (isFault(corner)) throw new Error(corner.message);
    expect([corner.fromHz.value, corner.toHz.value, corner.order]).toEqual([28, 32, 4]);
    expect(corner.fromHz.trace.mark).toBe('cp');
  });

  it('needs the tuning', () => {
    expect(subsonicCorner('box', 0)).toMatchObject({ fault: 'tuning-unknown', subjects: ['box'] });
  });
});
