import { expect, test } from 'vitest';
import { bandText, playedBandField } from '../../lib/model/content/played-band.ts';
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
