import { z } from 'zod';
import { builders } from '../audience.ts';
import { quantityWithin } from '../fields.ts';
import { equipmentBase } from './fields/equipment.ts';
import { menuFilterFields } from './fields/menu-filters.ts';
import { supplySchema } from './fields/supply.ts';
import { equipmentKind, kindField, supplyElement } from './kind.ts';

export const processorSchema = z.strictObject({
  kind: kindField('processor'),
  ...equipmentBase,
  supply: supplySchema,
  'sample-rate': builders(
    quantityWithin('frequency', { least: 8000, most: 800_000 }).optional(),
    'How many samples it takes of a signal in a second. It sets the step of its delays.',
    { example: '48 kHz' },
  ),
  summing: builders(
    z.boolean().optional(),
    'Whether it adds inputs that each carry a part of the band up to full range.',
  ),
  ...menuFilterFields,
});

export const processor = equipmentKind('Signal processors', processorSchema, (part) =>
  supplyElement(part.terminals, part.supply.type),
);
