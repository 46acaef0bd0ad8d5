import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { extent, quantity, quantityAbove, wireSize } from '../fields.ts';
import { colourSchema, conductorMaterialSchema, conductorRoleSchema } from '../vocabulary.ts';
import { stockKind } from './kind.ts';

export const wireSchema = z.strictObject({
  kind: everyone(z.literal('wire')),
  ...partBase,
  size: builders(wireSize),
  material: builders(conductorMaterialSchema.default('copper')),
  /** Temperature that the insulation is marked with; unmarked cable counts as 60 C. */
  insulation: builders(quantity('temperature').optional()),
  colour: builders(colourSchema),
  /** What the shop uses the reel for. */
  for: builders(z.array(conductorRoleSchema).min(1)),
  'outside-diameter': builders(extent.optional()),
  /** Measured resistance, where the copper is short of its gauge. */
  measured: builders(quantityAbove('lineResistance').optional()),
});

export const wire = stockKind('Wire', wireSchema);
