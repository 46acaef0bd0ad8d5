import { expect, test } from 'vitest';
import { bandText, playedBandField } from '../../lib/model/content/played-band.ts';
import { settableHz } from '../../lib/propose/sound/settable-hz.ts';
import { shopWith } from './links-of.ts';
import { readShort, shortText } from './short-shop.ts';

test.each([
  ['80 Hz to 3 kHz', { fromHz: 80, toHz: 3000 }],
  ['from 3.5 kHz', { fromHz: 3500 }],
  ['up to 80 Hz', { toHz: 80 }],
  ['everything', {}],
])('%s is a band, and is written back as one', (text, band) => {
  expect(playedBandField.parse(text)).toEqual(band);
  expect(playedBandField.parse(bandText(band))).toEqual(band);
});

// What is heard lies between 5 Hz and 40 kHz here; a band runs upwards.
test.each(['80 Hz to 80 Hz', 'from 4 Hz', 'up to 41 kHz', '80', 'above 80 Hz', 'from 80'])(
  '%s is none',
  (text) => {
    expect(playedBandField.safeParse(text).success).toBe(false);
  },
);

/** The corner of the first filter of an output of the bow speakers' amplifier, by the part of the speakers (Hz). */
function cornerOf(part: string): number | undefined {
  const { job } = readShort(
    shortText('open-boat').replace('bow: { part: coaxial-65', `bow: { part: ${part}`),
  );
  return job?.devices.find(({ id }) => id === 'amp')?.given?.filters.CH1?.[0]?.corner;
}

// Without a subwoofer a speaker goes as low as its maker lets it: 60 Hz and 70 Hz by the parts.
test.each([
  ['coaxial-65', 60],
  ['coaxial-525', 70],
])('%s begins at %d Hz where nothing plays below it', (part, hz) => {
  expect(cornerOf(part)).toBe(hz);
});

// The steps: common practice, no source. A high-pass protects, so that none comes out below what is asked for.
test.each([
  [75, 75],
  [75.01, 80],
  [81.25, 85],
  [95.1, 100],
  [100, 100],
  [100.1, 110],
  [995, 1000],
  [1000, 1000],
  [1001, 1100],
  [3500, 3500],
])('what begins at %d Hz begins at %d Hz on a knob', (hz, set) => {
  expect(settableHz(hz)).toBe(set);
});

// A quarter over 65 Hz is 81.25 Hz, which nobody sets by hand from 40 to 400 Hz: both sides of the crossing say 85 Hz.
test('a band that begins between two steps of a knob begins at the upper, and what plays below ends there', () => {
  const files = shopWith('parts/speakers.yaml', 'lowest-frequency: 60 Hz', 'lowest-frequency: 65 Hz');
  const { job } = readShort(shortText('under-seat-five'), undefined, files);
  const filters = Object.values(job?.devices.find(({ id }) => id === 'amp')?.given?.filters ?? {}).flat();
  const cornersOf = (pass: string) => filters.flatMap((one) => (one.pass === pass ? one.corner : []));
  // The rear is 5 1/4 in, which begin at 100 Hz by the table of bands.
  expect(new Set(cornersOf('high-pass'))).toEqual(new Set([85, 100]));
  expect(new Set(cornersOf('low-pass'))).toEqual(new Set([85]));
  expect(job?.proposals.map(({ reason }) => reason)).toContainEqual(
    expect.stringMatching(/plays from 85 Hz, by kind and frame: 81.25 Hz, up to what a hand sets a knob to/),
  );
});
