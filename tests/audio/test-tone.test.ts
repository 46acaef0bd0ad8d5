import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Filter, levelDb, pathResponse } from '../../lib/audio/filter/filter-response.ts';
import type { ShapedPeak } from '../../lib/audio/filter/peak.ts';
import type { TonePath } from '../../lib/audio/test-tone.ts';
import { isFault } from '../../lib/model/fault.ts';
import { preferredFrequenciesHz } from '../../lib/model/tables/preferred-frequencies.ts';
import { outsideCheck } from '../outside-check.ts';
import { levelsInSpice } from './path-in-spice.ts';
import { type Spice, startSpice } from './spice.ts';
import { found, hz, tone } from './tone-path.ts';

const inSpice = outsideCheck('paths-in-ngspice');

let spice: Spice;
beforeAll(async () => {
  spice = await startSpice();
});

const filter = (
  pass: Filter['pass'],
  cornerHz: number,
  type: Filter['type'] = 'linkwitz-riley',
  order = 4,
): Filter => ({ pass, type, order, cornerHz });

const db = (change: Partial<TonePath>) => tone(change).pathDb.value;

describe('the test tone', () => {
  // Common practice, no source: 40 to 50 Hz for bass, 1 kHz for others.
  it('is the usual one where the path is at most 3 dB down there', () => {
    expect(hz({ filters: [filter('high-pass', 80)] })).toBe(1000);
    expect(hz({ usualHz: 50, filters: [filter('subsonic', 25), filter('low-pass', 80)] })).toBe(50);
    expect(hz({})).toBe(1000);
  });

  // A Butterworth filter is 3.0103 dB down at its corner: the limit of 3 dB lies just inside.
  it('is another one from the corner of a Butterworth filter on, and stays just inside of it', () => {
    const at = (cornerHz: number) => hz({ filters: [filter('high-pass', cornerHz, 'butterworth')] });
    expect(at(999)).toBe(1000);
    expect(at(1000)).not.toBe(1000);
  });

  // By hand, 20 log10(1 + (fc / f)^4): above 3.5 kHz, 6.3 kHz is 0.79 dB down and 8 kHz 0.31 dB; below 500 Hz, 250 Hz
  // is 0.53 dB down and 200 Hz 0.22 dB; between 80 and 320 Hz, 160 Hz is 1.05 dB down and 200 Hz 1.45 dB, so that with
  // 0.3 dB to choose from 160 Hz is left.
  it('is then the third-octave tone nearest to the usual one that loses next to nothing', () => {
    expect(hz({ filters: [filter('high-pass', 3500)] })).toBe(8000);
    expect(hz({ filters: [filter('low-pass', 500)] })).toBe(200);
    const narrowBand = [filter('high-pass', 80), filter('low-pass', 320)];
    expect(hz({ filters: narrowBand })).toBe(200);
    expect(hz({ filters: narrowBand, nearDb: 0.3 })).toBe(160);
  });

  it('is one that the source gives', () => {
    expect(hz({ sourceHz: { from: 1200, to: 20_000 } })).toBe(1250);
    expect(hz({ sourceHz: { from: 20, to: 300 } })).toBe(250);
    expect(hz({ sourceHz: { from: 20, to: 1000 } })).toBe(1000);
    expect(found({ filters: [filter('high-pass', 3500)], sourceHz: { from: 20, to: 200 } })).toMatchObject({
      fault: 'tone-not-played',
    });
  });

  it('is always one that is recorded, within the limit of the path', () => {
    const corner = fc.double({ min: 25, max: 15_000, noNaN: true });
    fc.assert(
      fc.property(corner, fc.double({ min: 0.5, max: 8, noNaN: true }), (lowHz, octaves) => {
        const filters = [filter('high-pass', lowHz), filter('low-pass', lowHz * 2 ** octaves)];
        const result = tone({ filters });
        expect([...preferredFrequenciesHz, 1000]).toContain(result.frequencyHz.value);
        expect(result.pathDb.value).toBeLessThanOrEqual(0);
        expect(result.pathDb.value).toBeGreaterThanOrEqual(-3 - 1e-9);
      }),
    );
  });

  it('states its overlap', () => {
    expect(found({ overlapDb: 5 })).toMatchObject({ levelDb: { value: -5 } });
  });

  it.each([
    ['band-empty', { filters: [filter('high-pass', 80), filter('low-pass', 60)] }],
    ['band-empty', { filters: [filter('high-pass', 80), filter('low-pass', 80)] }],
    ['band-empty', { usualHz: 0 }],
    ['overlap-unclear', { overlapDb: -1 }],
    ['overlap-unclear', { overlapDb: 20.1 }],
    ['overlap-unclear', { overlapDb: Number.NaN }],
    ['filter-order-not-made', { filters: [filter('high-pass', 80, 'linkwitz-riley', 3)] }],
  ] as const)('is refused: %s', (fault, change) => {
    expect(found(change)).toMatchObject({ fault, of: ['front'] });
  });
});

describe('the level of the path at the tone', () => {
  it('is nothing where nothing stands in the path', () => {
    expect(db({})).toBe(0);
  });

  // By hand: 20 log10(1 + (50 / 70)^4) = 2.0092 dB, so that 37.42 V (700 W into 2 ohm) are read as 29.69 V.
  it('is that of the low-pass of a bass channel at 50 Hz', () => {
    expect(db({ usualHz: 50, filters: [filter('low-pass', 70)] })).toBeCloseTo(-2.0092, 3);
  });

  const bass: readonly Filter[] = [
    filter('low-pass', 70),
    filter('low-pass', 250, 'butterworth'),
    filter('subsonic', 28, 'butterworth'),
  ];
  const boost: ShapedPeak = { centreHz: 45, gainDb: 6, q: 1.2 };
  const cut: ShapedPeak = { centreHz: 63, gainDb: -4, q: 3 };
  const narrow: ShapedPeak = { centreHz: 43.7, gainDb: 9, q: 12 };
  it.each<[string, Partial<TonePath> & { readonly peaks: readonly ShapedPeak[] }]>([
    ['two low-passes and a subsonic filter', { usualHz: 50, filters: bass, peaks: [] }],
    ['a band of midrange', { filters: [filter('high-pass', 350), filter('low-pass', 3500)], peaks: [] }],
    ['a tweeter', { filters: [filter('high-pass', 3500, 'linkwitz-riley', 8)], peaks: [] }],
    ['a door speaker', { filters: [filter('high-pass', 700, 'butterworth', 3)], peaks: [] }],
    ['bass with a boost', { usualHz: 50, filters: bass, peaks: [boost] }],
    ['bass with a boost and a cut', { usualHz: 50, filters: bass, peaks: [boost, cut] }],
    ['a narrow boost between two tones', { usualHz: 50, filters: [], peaks: [narrow] }],
  ])('agrees with ngspice, highest level of a sweep and level at the tone: %s', async (_, change) => {
    const result = tone(change);
    const filters = change.filters ?? [];
    const frequencyHz = result.frequencyHz.value;
    const sweep = (perOctave: number, fromHz: number, toHz: number) =>
      levelsInSpice(spice, { filters, peaks: change.peaks }, { perOctave, fromHz, toHz });
    const coarse = await sweep(100, 5, 20_000);
    const best = coarse.reduce((high, point) => (point.db > high.db ? point : high));
    const fine = await sweep(20_000, best.hz / 1.01, best.hz * 1.01);
    const highest = Math.max(...fine.map((point) => point.db));
    const [at] = await levelsInSpice(
      spice,
      { filters, peaks: result.state === 'as-loaded' ? change.peaks : [] },
      { perOctave: 1, fromHz: frequencyHz, toHz: frequencyHz * 1.5 },
    );
    const outsideDb = Math.min(0, (at?.db ?? Number.NaN) - highest);
    expect(inSpice.differs(result.pathDb.value, outsideDb)).toBeCloseTo(outsideDb, 4);
  });

  // The narrow boost is 9 dB up between 40 and 50 Hz, and next to nothing at either.
  it('asks for equalising and boost flat where no tone comes near the highest', () => {
    const result = tone({ usualHz: 50, peaks: [narrow] });
    expect(result).toMatchObject({ state: 'equalising-flat', frequencyHz: { value: 50 } });
    expect(result.pathDb.value).toBeCloseTo(-9, 6);
  });

  it('counts a boost of unknown shape whole: flat, the reading is lower by all of it', () => {
    const unknown = { centreHz: null, gainDb: 6, q: null };
    const result = tone({ usualHz: 50, peaks: [unknown] });
    expect(result).toMatchObject({ state: 'equalising-flat' });
    expect(result.pathDb.value).toBeCloseTo(-6, 9);
    // One that is no more than the limit may stay on: at worst the tone has none of it.
    expect(tone({ usualHz: 50, peaks: [{ ...unknown, gainDb: 3 }] })).toMatchObject({ state: 'as-loaded' });
    expect(db({ usualHz: 50, peaks: [{ ...unknown, gainDb: 3 }] })).toBeCloseTo(-3, 9);
    // A cut lowers nothing but the tone, at worst.
    expect(db({ usualHz: 50, peaks: [{ ...unknown, gainDb: -2 }] })).toBeCloseTo(-2, 9);
  });

  it('never lets any frequency pass the target: the tone at its level, plus what lies above it', () => {
    const level = fc.double({ min: -12, max: 12, noNaN: true });
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 3000, noNaN: true }),
        fc.double({ min: 30, max: 15_000, noNaN: true }),
        level,
        fc.double({ min: 0.3, max: 10, noNaN: true }),
        fc.double({ min: 20, max: 20_000, noNaN: true }),
        (cornerHz, centreHz, gainDb, q, heardHz) => {
          const filters = [filter('high-pass', cornerHz, 'butterworth', 2)];
          const peaks = [{ centreHz, gainDb, q }];
          const result = tone({ filters, peaks });
          const whole = pathResponse({ id: 'front', filters, peaks });
          const read = pathResponse({
            id: 'front',
            filters,
            peaks: result.state === 'as-loaded' ? peaks : [],
          });
          if (isFault(whole) || isFault(read)) throw new Error('The filters are made.');
          const toneDb = levelDb(read(result.frequencyHz.value));
          // What the meter shows is pathDb below the target; another frequency lies above the tone by this much.
          const over = result.pathDb.value + levelDb(whole(heardHz)) - toneDb;
          expect(over).toBeLessThanOrEqual(1e-6);
        },
      ),
    );
  });
});
