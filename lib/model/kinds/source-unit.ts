import { z } from 'zod';
import { equipmentBase, equipmentKind, supplyElement, supplySchema } from './kind.ts';

export const sourceUnitSchema = z.strictObject({
  kind: z.literal('source-unit'),
  ...equipmentBase,
  supply: supplySchema,
});

export const sourceUnit = equipmentKind('Source units', sourceUnitSchema, (part) =>
  supplyElement(part.terminals, part.supply.type),
);
