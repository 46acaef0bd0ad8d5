import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { positiveNumber, quantityAbove } from '../fields.ts';
import { fuseFormSchema } from '../vocabulary.ts';
import { stockKind } from './kind.ts';

export const fuseSchema = z.strictObject({
  kind: everyone(z.literal('fuse')),
  ...partBase,
  form: builders(fuseFormSchema),
  rating: builders(quantityAbove('current')),
  /** Rated voltage by its maker; a house rule holds where it is silent. */
  voltage: builders(quantityAbove('voltage').optional()),
  /**
   * Time-current data by its maker: how long it carries a current at least, as a multiple of its rating, before it
   * opens. From the smallest multiple on, times fall.
   */
  'time-current': z
    .array(z.strictObject({ multiple: builders(positiveNumber), seconds: builders(quantityAbove('time')) }))
    .refine(isFalling, 'does not fall: write larger multiples after smaller ones, each with a shorter time')
    .optional(),
  /** Interrupting current by its maker; the house rule of its form applies where it is silent. */
  interrupts: builders(quantityAbove('current').optional()),
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
