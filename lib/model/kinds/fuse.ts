import { z } from 'zod';
import { builders } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { positiveNumber, quantityAbove } from '../fields.ts';
import { section } from '../writing/field-text.ts';
import { fuseFormField } from './fields/fuse-form.ts';
import { kindField, stockKind } from './kind.ts';

export const fuseSchema = z.strictObject({
  kind: kindField('fuse'),
  ...partBase,
  form: builders(fuseFormField, 'Its form.', { example: 'small-bolt-in' }),
  rating: builders(quantityAbove('current'), 'The current that is printed on it.', { example: '80 A' }),
  voltage: builders(quantityAbove('voltage').optional(), 'Its rated voltage by its maker.', {
    example: '32 V',
    leftOut: '{fuse-voltage}',
  }),
  'time-current': section(
    z
      .array(
        z.strictObject({
          multiple: builders(positiveNumber, 'The current, as a multiple of its rating.', { example: 2 }),
          seconds: builders(quantityAbove('time'), 'How long it carries that at least.', { example: '1 s' }),
        }),
      )
      .refine(isFalling, 'does not fall: write larger multiples after smaller ones, each with a shorter time')
      .optional(),
    'How long it carries a current at least before it opens, by its maker. Times fall as the current grows.',
    {
      example: [
        { multiple: 2, seconds: '1 s' },
        { multiple: 6, seconds: '0.1 s' },
      ],
    },
  ),
  interrupts: builders(
    quantityAbove('current').optional(),
    'The greatest current that it interrupts, by its maker.',
    { example: '2000 A', leftOut: 'by its form: house rules' },
  ),
});

/** A point of time-current data. */
export interface TimeCurrentPoint {
  readonly multiple: number;
  readonly seconds: number;
}

function isFalling(points: readonly TimeCurrentPoint[]): boolean {
  return points.every(({ multiple, seconds }, k) => {
    const before = points[k - 1];
    return before === undefined || (multiple > before.multiple && seconds <= before.seconds);
  });
}

export const fuse = stockKind('Fuses', fuseSchema);
