import { z } from 'zod';
import { equipmentBase } from './fields/equipment.ts';
import { equipmentKind, kindField } from './kind.ts';

export const levelControlSchema = z.strictObject({
  kind: kindField('level-control'),
  ...equipmentBase,
});

export const levelControl = equipmentKind('Level controls', levelControlSchema, () => []);
