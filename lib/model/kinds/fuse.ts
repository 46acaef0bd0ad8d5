import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantityAbove } from '../fields.ts';
import { fuseFormSchema } from '../vocabulary.ts';
import { partBase, stockKind } from './kind.ts';

export const fuseSchema = z.strictObject({
  kind: everyone(z.literal('fuse')),
  ...partBase,
  form: builders(fuseFormSchema),
  rating: builders(quantityAbove('current')),
  /** Interrupting current by its maker; the house rule of its form applies where it is silent. */
  interrupts: builders(quantityAbove('current').optional()),
});

export const fuse = stockKind('Fuses', fuseSchema);
