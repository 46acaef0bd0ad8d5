import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantity } from '../fields.ts';
import { equipmentBase, equipmentKind } from './kind.ts';

export const enclosureSchema = z.strictObject({
  kind: everyone(z.literal('enclosure')),
  ...equipmentBase,
  volume: builders(quantity('volume')),
  loading: builders(z.enum(['sealed', 'ported', 'band-pass'])),
  tuning: builders(quantity('frequency').optional()),
});

export const enclosure = equipmentKind('Enclosures', enclosureSchema, () => []);
