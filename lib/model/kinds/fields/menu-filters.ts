import { z } from 'zod';
import { builders } from '../../audience.ts';
import { count, text } from '../../fields.ts';
import { names, rows, span } from '../../short-forms/short-form.ts';
import { filterTypeSchema } from '../../vocabulary.ts';
import { section } from '../../writing/field-text.ts';
import { audible } from './bounds.ts';

/** Filters of a device that are set in its menu or its program; those of a knob or a switch stand under its controls. */
export const menuFilterFields = {
  'filter-orders': builders(
    z.array(count).optional(),
    'The orders of the filters, high-pass and low-pass, that it makes in its menu: 2 is 12 dB per octave. Those of a knob or a switch are written under `controls:`.',
    {
      example: [1, 2, 3, 4],
      leftOut: 'its menu makes no filter, and one that a job writes at it stops the job',
    },
  ),
  'filter-types': builders(z.array(filterTypeSchema).min(1).optional(), 'The shapes of these filters.', {
    example: ['butterworth', 'linkwitz-riley'],
    leftOut: 'all of them',
  }),
  'filter-range': section(
    span(
      z.strictObject({
        from: builders(audible, 'The lowest corner.', { example: '20 Hz' }),
        to: builders(audible, 'The highest corner.', { example: '20 kHz' }),
      }),
    ).optional(),
    'The corners that these filters reach.',
    { leftOut: 'every corner' },
  ),
  'filter-outputs': builders(
    names(z.array(text('OUT1')).min(1)).optional(),
    'The outputs that have these filters, by terminal or pair.',
    { example: ['OUT1', 'OUT2'], leftOut: 'all of them' },
  ),
  'filters-at': section(
    rows(
      z.record(
        z.string(),
        z.strictObject({
          orders: builders(z.array(count).min(1), 'The orders of the filters that it makes there.', {
            example: [2, 4],
          }),
          types: builders(z.array(filterTypeSchema).min(1).optional(), 'Their shapes.', {
            example: ['butterworth'],
            leftOut: 'as `filter-types:` tells',
          }),
          range: section(
            span(
              z.strictObject({
                from: builders(audible, 'The lowest corner.', { example: '50 Hz' }),
                to: builders(audible, 'The highest corner.', { example: '160 Hz' }),
              }),
            ).optional(),
            'The corners that they reach.',
            { leftOut: 'as `filter-range:` tells' },
          ),
        }),
      ),
    ).optional(),
    'Outputs at which its menu makes other filters than those, by terminal or pair.',
    { name: 'SUB-L' },
  ),
};
