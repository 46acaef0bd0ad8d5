import { z } from 'zod';
import { everyone } from '../audience.ts';
import { outputsSchema } from '../content/integration.ts';
import { equipmentBase, equipmentKind, supplyElement, supplySchema } from './kind.ts';

export const sourceUnitSchema = z.strictObject({
  kind: everyone(z.literal('source-unit')),
  ...equipmentBase,
  supply: supplySchema,
  /** What its outputs give, by terminal or pair. */
  outputs: outputsSchema.default({}),
});

export const sourceUnit = equipmentKind('Source units', sourceUnitSchema, (part) =>
  supplyElement(part.terminals, part.supply.type),
);
