import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { count, quantityWithin } from '../fields.ts';
import { equipmentBase, equipmentKind, supplyElement, supplySchema } from './kind.ts';

export const processorSchema = z.strictObject({
  kind: everyone(z.literal('processor')),
  ...equipmentBase,
  supply: supplySchema,
  'sample-rate': builders(quantityWithin('frequency', { least: 8000, most: 800_000 }).optional()),
  /** Whether it adds band-limited inputs up to full range. */
  summing: builders(z.boolean().optional()),
  'filter-orders': builders(z.array(count).optional()),
});

export const processor = equipmentKind('Signal processors', processorSchema, (part) =>
  supplyElement(part.terminals, part.supply.type),
);
