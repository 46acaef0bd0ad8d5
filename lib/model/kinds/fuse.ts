import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantity } from '../fields.ts';
import { fuseFormSchema } from '../vocabulary.ts';
import { partBase, stockKind } from './kind.ts';

export const fuseSchema = z.strictObject({
  kind: everyone(z.literal('fuse')),
  ...partBase,
  form: builders(fuseFormSchema),
  rating: builders(quantity('current')),
  /** Interrupting current by its maker; the table's figure for the form applies where it is silent. */
  interrupts: builders(quantity('current').optional()),
});

export const fuse = stockKind('Fuses', fuseSchema);
