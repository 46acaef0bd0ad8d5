import { z } from 'zod';
import { shopOnly } from '../audience.ts';
import { day, quantityWithin, text } from '../fields.ts';
import { workLayerSchema } from '../vocabulary.ts';

/** The longest that one person works in a day (s). */
const dayS = 24 * 3600;

/** What one person worked on a job in a day. For the shop alone. */
export const workedHoursSchema = z.strictObject({
  day: shopOnly(day, 'The day.', { example: '2026-02-10' }),
  layer: shopOnly(
    workLayerSchema.optional(),
    'What was worked on: a layer of the order of work, as it is called there.',
    { example: 'board', leftOut: 'the whole job' },
  ),
  worked: shopOnly(
    quantityWithin('time', { above: 0, most: dayS }),
    'How long one person worked on it that day; two who work side by side have a line each.',
    { example: '2.5 h' },
  ),
  by: shopOnly(text('initials').optional(), 'Who worked.', { example: 'L. S.' }),
});
export type WorkedHours = z.output<typeof workedHoursSchema>;
