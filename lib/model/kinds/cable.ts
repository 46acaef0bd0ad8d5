import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { extent, quantity, text, wireSize } from '../fields.ts';
import { colourSchema, conductorRoleSchema, vehicleSideSchema } from '../vocabulary.ts';
import { stockKind } from './kind.ts';

export const cableSchema = z.strictObject({
  kind: everyone(z.literal('cable')),
  ...partBase,
  form: builders(z.enum(['multi-conductor', 'twisted-pair', 'coaxial', 'data'])),
  conductors: z.record(
    z.string(),
    z.strictObject({
      size: builders(wireSize),
      colour: builders(colourSchema),
      /** Of a lead with a conductor for each side. */
      side: builders(vehicleSideSchema.optional()),
    }),
  ),
  insulation: builders(quantity('temperature').optional()),
  for: builders(z.array(conductorRoleSchema).min(1)),
  'outside-diameter': builders(extent.optional()),
  /** A made-up lead of fixed length, such as a phono lead; none for cable cut from a reel. */
  'made-length': builders(extent.optional()),
  plugs: builders(text('phono').optional()),
});

export const cable = stockKind('Cable', cableSchema);
