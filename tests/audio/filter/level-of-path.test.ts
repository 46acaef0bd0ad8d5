import { describe, expect, test } from 'vitest';
import { speakerDelays } from '../../../lib/audio/delay.ts';
import {
  type Filter,
  filterLevel,
  filterResponse,
  levelDb,
} from '../../../lib/audio/filter/filter-response.ts';
import { pathLevel } from '../../../lib/audio/filter/path-level.ts';
import { peakResponse } from '../../../lib/audio/filter/peak.ts';
import { highestLevelDb } from '../../../lib/audio/filter/response-curve.ts';
import { subsonicCorner } from '../../../lib/audio/filter/subsonic-corner.ts';
import { channelWiring } from '../../../lib/audio/load/channel-wiring.ts';
import { levelDifferences, speakerWireLoss } from '../../../lib/audio/load/speaker-wire-loss.ts';
import { powerAtLoad } from '../../../lib/audio/rated-power.ts';
import type { Traced } from '../../../lib/model/trace.ts';
import { redone } from '../../publish/workings/redo.ts';

const filter = (own: Partial<Filter>): Filter => ({
  pass: 'low-pass',
  type: 'butterworth',
  order: 2,
  cornerHz: 80,
  ...own,
});
const at = (frequencyHz: number, own: Partial<Filter> = {}): number => {
  const found = filterLevel('path', filter(own), frequencyHz);
  return 'fault' in found ? Number.NaN : found.value;
};
const inputsOf = ({ trace }: Traced<number>) =>
  trace.inputs.map(({ name, value, unit }) => [name, value, unit]);

describe('the level of a filter', () => {
  // Butterworth, 1930: at twice its corner 10 log10(1 + 2^(2n)) down; 12.30 dB of order 2. Linkwitz and Riley, 1976: half
  // of the voltage at the corner. A Bessel filter is scaled to half of the power at its corner.
  test('is that of its type', () => {
    expect(at(160)).toBeCloseTo(-10 * Math.log10(17), 9);
    expect(at(40, { pass: 'high-pass' })).toBeCloseTo(-10 * Math.log10(17), 9);
    expect(at(80, { type: 'linkwitz-riley', order: 4 })).toBeCloseTo(20 * Math.log10(0.5), 9);
    for (const order of [2, 3, 4])
      expect(at(80, { type: 'bessel', order })).toBeCloseTo(10 * Math.log10(0.5), 9);
  });

  test('has frequency, corner and order in its working', () => {
    const found = filterLevel('path', filter({}), 160);
    if ('fault' in found) throw new Error(found.message);
    expect(inputsOf(found)).toEqual([
      ['f', 160, 'Hz'],
      ['fc', 80, 'Hz'],
      ['n', 2, ''],
    ]);
  });

  test('is none of an order that its type has not, or without a corner', () => {
    expect(filterResponse('path', filter({ type: 'linkwitz-riley', order: 3 }))).toMatchObject({
      fault: 'filter-order-not-made',
    });
    expect(filterResponse('path', filter({ cornerHz: 0 }))).toMatchObject({ fault: 'filter-corner-unclear' });
  });
});

// Bristow-Johnson, Audio EQ Cookbook: the gain at the centre, half of it in dB where |w - 1/w| = 1/Q, nothing far away.
describe('a peak', () => {
  const peak = { centreHz: 50, gainDb: 6, q: 1 };
  const golden = (1 + Math.sqrt(5)) / 2;

  test('is as high as it is told at its centre, and half as high at the edges of its band', () => {
    const levelAt = (frequencyHz: number) => levelDb(peakResponse(peak)(frequencyHz));
    expect(levelAt(50)).toBeCloseTo(6, 9);
    expect(levelAt(50 * golden)).toBeCloseTo(3, 9);
    expect(levelAt(50 / golden)).toBeCloseTo(3, 9);
    expect(levelAt(50_000)).toBeCloseTo(0, 4);
  });

  test('is found by the search for the highest level of a response, wherever it is', () => {
    for (const centreHz of [7.3, 50, 1234, 17_000])
      expect(highestLevelDb(peakResponse({ ...peak, centreHz, q: 30 }), [centreHz * 1.01])).toBeCloseTo(6, 3);
  });
});

describe('the level of a path', () => {
  const path = (peaks: readonly { centreHz: number | null; gainDb: number; q: number | null }[]) => {
    const found = pathLevel({
      channel: 'bass',
      filters: [filter({ type: 'linkwitz-riley', order: 4 })],
      peaks,
    });
    if ('fault' in found) throw new Error(found.message);
    return found;
  };

  test('is that of all its parts together, each told at the tone', () => {
    const level = path([{ centreHz: 80, gainDb: 6, q: 1 }]);
    expect(level.atDb(80)).toBeCloseTo(20 * Math.log10(0.5) + 6, 9);
    expect(level.partsAt(80)).toEqual([
      ['low-pass at 80 Hz', expect.closeTo(20 * Math.log10(0.5), 9), 'dB'],
      ['6 dB at 80 Hz', expect.closeTo(6, 9), 'dB'],
    ]);
  });

  test('counts what nobody knows the shape of to the safe side: the cut at the tone, the boost at the highest', () => {
    const unknown = { centreHz: null, q: null };
    const level = path([
      { ...unknown, gainDb: 5 },
      { ...unknown, gainDb: -3 },
    ]);
    expect(level.atDb(80)).toBeCloseTo(20 * Math.log10(0.5) - 3, 9);
    expect(level.highestDb).toBeCloseTo(5, 3);
    expect(level.partsAt(80).slice(1)).toEqual([
      ['5 dB at an unknown centre', 0, 'dB'],
      ['-3 dB at an unknown centre', -3, 'dB'],
    ]);
  });
});

describe('a working of the audio side can be redone from what it names', () => {
  test('the corner of a subsonic filter: 0.7 to 0.8 of the tuning, common practice', () => {
    const found = subsonicCorner('box', 35, { from: 0.7, to: 0.8 });
    if ('fault' in found) throw new Error(found.message);
    for (const corner of [found.fromHz, found.toHz])
      expect(redone(corner.trace)).toBeCloseTo(corner.value, 9);
    expect(found.fromHz.value).toBeCloseTo(24.5, 9);
  });

  test('the resistance of a lead: 2 * 5 m of 10 mohm/m', () => {
    const found = speakerWireLoss({ channel: 'a', loadOhm: 4, legs: [{ lengthM: 5, ohmPerM: 0.01 }] });
    if ('fault' in found) throw new Error(found.message);
    expect(found.wireOhm.value).toBeCloseTo(0.1, 12);
    expect(inputsOf(found.wireOhm)).toEqual([
      ['L', 5, 'm'],
      ['r', 0.01, 'ohm/m'],
    ]);
  });

  test('how far a path is below the loudest', () => {
    const [, far] = levelDifferences([
      { path: 'near', lossDb: 0.1, otherDb: 2 },
      { path: 'far', lossDb: 0.4 },
    ]);
    expect(far?.belowDb.value).toBeCloseTo(2.3, 9);
    expect(far && inputsOf(far.belowDb)).toEqual([
      ['Lmax', 1.9, 'dB'],
      ['other', 0, 'dB'],
      ['loss', 0.4, 'dB'],
    ]);
  });

  test('the power into a load between two published ones', () => {
    const rated = [
      { loadOhm: 4, powerW: 100 },
      { loadOhm: 2, powerW: 180 },
    ];
    const found = powerAtLoad('a', 3, { minimumOhm: 2, rated });
    if ('fault' in found) throw new Error(found.message);
    expect(inputsOf(found.powerW)).toEqual([
      ['R', 3, 'ohm'],
      ['Rn', 2, 'ohm'],
      ['Pn', 180, 'W'],
      ['Rn', 4, 'ohm'],
      ['Pn', 100, 'W'],
    ]);
    // For sure sqrt(100 / 4) = 5 A and sqrt(180 * 2) = 18.97 V: 75 W and 120 W; at most 20 V and 9.49 A: 133 W and 270 W.
    expect(found.powerW.value).toBeCloseTo(120, 9);
    expect(found.greatestPowerW.value).toBeCloseTo(400 / 3, 9);
    for (const bad of [
      { loadOhm: 8, powerW: 0 },
      { loadOhm: 0, powerW: 10 },
      { loadOhm: 4, powerW: 60 },
    ])
      expect(powerAtLoad('a', 3, { minimumOhm: 2, rated: [...rated, bad] })).toMatchObject({
        fault: 'rated-power-unclear',
      });
  });
});

describe('one coil on a channel', () => {
  const wired = (joins: readonly (readonly [string, string])[]) =>
    channelWiring({
      channel: 'bass',
      positive: 'amp+',
      negative: 'amp-',
      otherOutputs: [],
      coils: [{ coil: 'sub.C', speaker: 'sub', positive: 'c+', negative: 'c-' }],
      joins,
    });

  test('is the whole wiring, normal or reversed, or left open', () => {
    const plain = wired([
      ['amp+', 'c+'],
      ['c-', 'amp-'],
    ]);
    expect(plain).toEqual({
      wiring: { kind: 'coil', coil: 'sub.C' },
      polarity: [{ coil: 'sub.C', polarity: 'normal' }],
    });
    expect(
      wired([
        ['amp+', 'c-'],
        ['amp-', 'c+'],
      ]),
    ).toMatchObject({ polarity: [{ coil: 'sub.C', polarity: 'reversed' }] });
    expect(wired([['amp+', 'c+']])).toMatchObject({ fault: 'coil-left-open' });
  });
});

test('delays are refused without a sampling rate, and where a speaker has two distances', () => {
  const speakers = [{ speaker: 'left', distanceM: 1 }];
  expect(speakerDelays({ speakers, airC: 20, sampleRateHz: 0 })).toMatchObject({
    fault: 'sample-rate-unclear',
  });
  expect(
    speakerDelays({ speakers: [...speakers, ...speakers], airC: 20, sampleRateHz: 48_000 }),
  ).toMatchObject({
    fault: 'speaker-twice',
  });
});
