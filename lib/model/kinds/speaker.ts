import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { extent, isRising, quantity, quantityAbove, runsDownwards, text } from '../fields.ts';
import { boxLoadingSchema } from './enclosure.ts';
import { equipmentBase, equipmentKind } from './kind.ts';

const volumes = z
  .strictObject({ from: builders(quantity('volume')), to: builders(quantity('volume')) })
  .refine(isRising, runsDownwards);

export const speakerSchema = z.strictObject({
  kind: everyone(z.literal('speaker')),
  ...equipmentBase,
  /** What it plays; protection rules go by it. */
  band: everyone(z.enum(['tweeter', 'midrange', 'midbass', 'full-range', 'coaxial', 'subwoofer'])),
  coils: z.record(
    z.string(),
    z.strictObject({
      positive: builders(text('C1+')),
      negative: builders(text('C1-')),
      nominal: builders(quantityAbove('resistance')),
      'direct-current': builders(quantityAbove('resistance').optional()),
    }),
  ),
  /** Power that the whole speaker may take for long. */
  power: builders(quantityAbove('power')),
  'lowest-frequency': builders(quantity('frequency').optional()),
  /** Diameter of the hole that it goes into; its frame covers the rim, its height is its mounting depth. */
  'cut-out': builders(extent.optional()),
  /** Volumes of box that its maker allows, by how the box loads it. */
  boxes: z.partialRecord(boxLoadingSchema, volumes).optional(),
});

/** A coil is a load of an amplifier, not of the 12 V network. */
export const speaker = equipmentKind('Speakers', speakerSchema, () => []);
