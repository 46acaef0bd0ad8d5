import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { extent, quantity } from '../fields.ts';
import { equipmentBase, equipmentKind } from './kind.ts';

/** How the air of a box works on the cone. */
export const boxLoadingSchema = z.enum(['sealed', 'ported', 'band-pass']);

export const enclosureSchema = z.strictObject({
  kind: everyone(z.literal('enclosure')),
  ...equipmentBase,
  volume: builders(quantity('volume')),
  loading: builders(boxLoadingSchema),
  tuning: builders(quantity('frequency').optional()),
  /** Diameter of the hole for the speaker, and what is free behind it. */
  opening: builders(extent.optional()),
  'free-depth': builders(extent.optional()),
});

export const enclosure = equipmentKind('Enclosures', enclosureSchema, () => []);
