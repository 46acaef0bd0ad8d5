import { z } from 'zod';
import { equipmentBase, equipmentKind } from './kind.ts';

export const levelControlSchema = z.strictObject({
  kind: z.literal('level-control'),
  ...equipmentBase,
});

export const levelControl = equipmentKind('Level controls', levelControlSchema, () => []);
