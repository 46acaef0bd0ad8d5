import type { Mark } from '../trace.ts';

/**
 * Preferred frequencies of third-octave bands in the range of hearing (ISO 266, quoted from memory), in Hz: the tones
 * that discs and files of test tones are recorded in. 31.5 Hz is left out, since tones are told in whole hertz.
 */
export const preferredFrequenciesHz: readonly number[] = [
  20, 25, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500,
  3150, 4000, 5000, 6300, 8000, 10_000, 12_500, 16_000, 20_000,
];

/** What a choice among them cites. */
export const preferredFrequencies: { readonly citation: string; readonly mark: Mark } = {
  citation: 'ISO 266, third-octave tones (quoted from memory); common practice, no source',
  mark: 'mem',
};
