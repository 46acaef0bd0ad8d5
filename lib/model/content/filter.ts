import { z } from 'zod';
import { builders } from '../audience.ts';
import { quantity } from '../fields.ts';
import { filterOrder, filterPassSchema, filterTypeSchema } from '../vocabulary.ts';

/** A filter: what it passes, its shape and its corner. */
export const filterSchema = z.strictObject({
  pass: builders(
    filterPassSchema,
    'What the filter lets through. A subsonic filter is a high-pass below the band of a subwoofer.',
    { example: 'high-pass' },
  ),
  type: builders(filterTypeSchema, 'Its shape.', { example: 'butterworth' }),
  order: builders(filterOrder, 'Its order: 1 is 6 dB per octave, 4 is 24 dB per octave.', { example: 2 }),
  corner: builders(quantity('frequency'), 'Its corner frequency.', { example: '80 Hz' }),
});

/** A filter as a job file writes it. */
export type FilterText = z.input<typeof filterSchema>;
