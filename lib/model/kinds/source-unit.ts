import { z } from 'zod';
import { outputsSchema } from '../content/output-facts.ts';
import { section } from '../writing/field-text.ts';
import { fittedBase } from './fields/equipment.ts';
import { menuFilterFields } from './fields/menu-filters.ts';
import { supplySchema } from './fields/supply.ts';
import { equipmentKind, kindField, supplyElement } from './kind.ts';

export const sourceUnitSchema = z.strictObject({
  kind: kindField('source-unit'),
  ...fittedBase,
  supply: supplySchema,
  ...menuFilterFields,
  outputs: section(
    outputsSchema.default({}),
    'What its outputs give by its maker, by terminal or pair. What was found in a vehicle goes before it.',
    { name: 'OUT1' },
  ),
});

export const sourceUnit = equipmentKind('Source units', sourceUnitSchema, (part) =>
  supplyElement(part.terminals, part.supply.type),
);
