import { describe, expect, it } from 'vitest';
import type { Filter } from '../../lib/audio/filter/filter-response.ts';
import { cornersOf } from '../../lib/audio/test-tone.ts';
import { found, hz, tone } from './tone-path.ts';

const filter = (pass: Filter['pass'], cornerHz: number): Filter => ({
  pass,
  type: 'linkwitz-riley',
  order: 4,
  cornerHz,
});

/** A band so narrow that its filters let nothing through whole: each is 6 dB down at its corner. */
const narrow = [filter('high-pass', 950), filter('low-pass', 1050)];

describe('the source', () => {
  it('plays its own ends, and nothing beyond', () => {
    expect(hz({ sourceHz: { from: 1000, to: 20_000 } })).toBe(1000);
    expect(hz({ sourceHz: { from: 20, to: 1000 } })).toBe(1000);
    expect(hz({ sourceHz: { from: 1000.1, to: 20_000 } })).toBeGreaterThan(1000);
    expect(hz({ sourceHz: { from: 20, to: 999.9 } })).toBeLessThan(1000);
  });

  it('that plays no tone at all is named, with what it gives', () => {
    expect(found({ sourceHz: { from: 30_000, to: 40_000 } })).toMatchObject({
      fault: 'tone-not-played',
      of: ['front'],
      message: expect.stringContaining('its source gives 30000 to 40000 Hz'),
    });
  });
});

describe('the level of the path', () => {
  it('counts against its own highest, however little of the band comes through', () => {
    // 1,150 Hz lies within 3 dB of the highest of this band, and more than 0.5 dB below it.
    expect(hz({ filters: narrow, usualHz: 1150 })).toBe(1150);
    expect(tone({ filters: narrow, usualHz: 1150 }).state).toBe('as-loaded');
    const level = tone({ filters: narrow, usualHz: 1150 }).pathDb.value;
    expect(level).toBeLessThan(-0.5);
    expect(level).toBeGreaterThan(-3);
  });

  it('counts against the highest of the bare filters while a boost elsewhere stands flat', () => {
    const flat = tone({
      filters: narrow,
      usualHz: 1150,
      peaks: [{ centreHz: 950, gainDb: 20, q: 20 }],
      sourceHz: { from: 1100, to: 20_000 },
    });
    expect(flat.state).toBe('equalising-flat');
    expect(flat.frequencyHz.value).toBe(1150);
    expect(flat.pathDb.trace.formula).toContain('equalising and boosts flat');
    expect(tone({}).pathDb.trace.formula).not.toContain('flat');
  });

  it('of the highest tone is near enough where nothing may lie below it', () => {
    expect(hz({ filters: narrow, usualHz: 40, nearDb: 0 })).toBe(1000);
  });
});

describe('the working', () => {
  it('tells common practice from the tones of ISO 266', () => {
    const usual = tone({}).frequencyHz.trace;
    expect([usual.mark, usual.formula]).toEqual(['cp', expect.stringMatching(/^f = 1000 Hz/)]);
    const other = tone({ filters: [filter('high-pass', 4000)] }).frequencyHz.trace;
    expect(other.citation).toContain('ISO 266');
    expect(other.formula).toMatch(/^f = the third-octave tone nearest to 1000 Hz/);
  });

  it('names each corner, and the ends of the source where they are known', () => {
    expect(tone({ filters: narrow }).frequencyHz.trace.inputs).toEqual([
      { name: 'high-pass', value: 950, unit: 'Hz' },
      { name: 'low-pass', value: 1050, unit: 'Hz' },
    ]);
    expect(tone({ sourceHz: { from: 20, to: 20_000 } }).frequencyHz.trace.inputs).toEqual([
      { name: 'source from', value: 20, unit: 'Hz' },
      { name: 'source to', value: 20_000, unit: 'Hz' },
    ]);
  });

  it('names the overlap, and the level at the tone with the highest', () => {
    const { levelDb, pathDb } = tone({ overlapDb: 5, filters: [filter('high-pass', 80)] });
    expect(levelDb).toMatchObject({
      value: -5,
      trace: { mark: 'cp', inputs: [{ name: 'overlap', value: 5, unit: 'dB' }] },
    });
    const inputs = pathDb.trace.inputs.map(({ name }) => name);
    expect([inputs[0], inputs.at(-1)]).toEqual(['f', 'Lmax']);
    expect(inputs.length).toBeGreaterThan(2);
    expect(pathDb.trace.inputs[0]).toEqual({ name: 'f', value: 1000, unit: 'Hz' });
    // No sign before a level of nothing.
    expect(tone({ overlapDb: 0 }).levelDb.value).toBe(0);
  });
});

describe('a path is refused', () => {
  it('with an overlap outside 0 to 20 dB, the ends themselves taken', () => {
    for (const overlapDb of [0, 20]) expect(found({ overlapDb })).not.toHaveProperty('fault');
    for (const overlapDb of [-0.1, 20.1, Number.NaN])
      expect(found({ overlapDb })).toMatchObject({ fault: 'overlap-unclear', of: ['front'] });
  });

  it('with a corner below nothing, or a band without width', () => {
    for (const filters of [
      [filter('high-pass', -5)],
      [filter('high-pass', 100), filter('low-pass', 100)],
      [filter('high-pass', 200), filter('low-pass', 100)],
    ])
      expect(found({ filters })).toMatchObject({ fault: 'band-empty', of: ['front'] });
    expect(found({ usualHz: 0 })).toMatchObject({ fault: 'band-empty' });
  });
});

it('between several filters the highest high-pass and the lowest low-pass bound the band', () => {
  const filters = [
    filter('subsonic', 25),
    filter('high-pass', 80),
    filter('low-pass', 5000),
    filter('low-pass', 3000),
  ];
  expect(cornersOf(filters)).toEqual({ highPassHz: 80, lowPassHz: 3000 });
  expect(cornersOf([])).toEqual({});
  expect(cornersOf(filters.slice(0, 2))).toEqual({ highPassHz: 80 });
  expect(cornersOf(filters.slice(2))).toEqual({ lowPassHz: 3000 });
});
