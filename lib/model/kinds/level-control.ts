import { z } from 'zod';
import { everyone } from '../audience.ts';
import { equipmentBase } from './fields/equipment.ts';
import { equipmentKind } from './kind.ts';

export const levelControlSchema = z.strictObject({
  kind: everyone(z.literal('level-control'), 'What kind of part it is. The fields of a part follow from it.'),
  ...equipmentBase,
});

export const levelControl = equipmentKind('Level controls', levelControlSchema, () => []);
