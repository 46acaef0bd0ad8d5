import { z } from 'zod';
import { everyone } from '../audience.ts';
import { outputsSchema } from '../content/integration.ts';
import { section } from '../writing/field-text.ts';
import { equipmentBase } from './fields/equipment.ts';
import { supplySchema } from './fields/supply.ts';
import { equipmentKind, supplyElement } from './kind.ts';

export const sourceUnitSchema = z.strictObject({
  kind: everyone(z.literal('source-unit'), 'What kind of part it is. The fields of a part follow from it.'),
  ...equipmentBase,
  supply: supplySchema,
  outputs: section(
    outputsSchema.default({}),
    'What its outputs give by its maker, by terminal or pair. What was found in a vehicle goes before it.',
    { name: 'OUT1' },
  ),
});

export const sourceUnit = equipmentKind('Source units', sourceUnitSchema, (part) =>
  supplyElement(part.terminals, part.supply.type),
);
