import { beforeAll, describe, expect, it } from 'vitest';
import { type Filter, pathResponse } from '../../lib/audio/filter/filter-response.ts';
import { gapsBetween, type PlayedWay } from '../../lib/audio/played-octaves.ts';
import { cornersOf } from '../../lib/audio/test-tone.ts';
import { isFault } from '../../lib/model/fault.ts';
import { levelsInSpice } from './path-in-spice.ts';
import { type Spice, startSpice } from './spice.ts';

let spice: Spice;
beforeAll(async () => {
  spice = await startSpice();
});

const filter = (pass: Filter['pass'], cornerHz: number, order = 4): Filter => {
  return { pass, type: 'butterworth', order, cornerHz };
};
function way(id: string, ...filters: readonly Filter[]): PlayedWay {
  const response = pathResponse({ id, filters });
  if (isFault(response)) throw new Error(response.message);
  return { id, response, ...cornersOf(filters) };
}
const low = filter('low-pass', 70);
const high = filter('high-pass', 160, 3);

describe('a stretch that nobody plays', () => {
  // Butterworth ladders in ngspice: the magnitudes of the two ways added, at the frequency where they add to least.
  it('is as deep as the magnitudes that ngspice gives of both ways', async () => {
    const [gap, ...more] = gapsBetween([way('bass', low), way('front', high)], 3);
    const sweep = { perOctave: 400, fromHz: 70, toHz: 160 };
    const lows = await levelsInSpice(spice, { filters: [low] }, sweep);
    const highs = await levelsInSpice(spice, { filters: [high] }, sweep);
    const sums = lows.map(({ db }, index) => {
      return 20 * Math.log10(10 ** (db / 20) + 10 ** ((highs[index]?.db ?? Number.NaN) / 20));
    });
    expect(more).toEqual([]);
    expect(gap).toMatchObject({ below: { id: 'bass' }, above: { id: 'front' } });
    expect(Math.abs((gap?.deepestDb ?? 0) - Math.min(...sums))).toBeLessThan(0.05);
    // log2(160 / 70) by hand.
    expect(gap?.octaves).toBeCloseTo(1.1926, 4);
  });

  it('is one for each pair of corners', () => {
    const mid = way('mid', filter('high-pass', 400), filter('low-pass', 1500));
    const gaps = gapsBetween([way('bass', low), mid, way('top', filter('high-pass', 6000))], 6);
    expect(gaps.map(({ below, above }) => [below.id, above.id])).toEqual([
      ['bass', 'mid'],
      ['mid', 'top'],
    ]);
  });

  it('is none where another way plays there, or nothing lies between two corners', () => {
    const whole = way('rear', filter('high-pass', 60));
    expect(gapsBetween([way('bass', low), way('top', filter('high-pass', 3000)), whole], 6)).toEqual([]);
    expect(gapsBetween([way('bass', low)], 6)).toEqual([]);
    expect(gapsBetween([way('top', high)], 6)).toEqual([]);
    expect(
      gapsBetween([way('bass', filter('low-pass', 200)), way('top', filter('high-pass', 80))], 6),
    ).toEqual([]);
    expect(gapsBetween([], 6)).toEqual([]);
  });
});
