import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { isRising, quantity, quantityAbove, quantityWithin, runsDownwards, text } from '../fields.ts';
import { rows, shortened, span } from '../short-forms/short-form.ts';
import { audible, speakerLoad } from './bounds.ts';
import { boxLoadingSchema } from './enclosure.ts';
import { equipmentBase, equipmentKind } from './kind.ts';

const volumes = span(
  z
    .strictObject({ from: builders(quantity('volume')), to: builders(quantity('volume')) })
    .refine(isRising, runsDownwards),
);

export const speakerSchema = z.strictObject({
  kind: everyone(z.literal('speaker')),
  ...equipmentBase,
  /** What it plays; protection rules go by it. */
  band: everyone(z.enum(['tweeter', 'midrange', 'midbass', 'full-range', 'coaxial', 'subwoofer'])),
  coils: rows(
    z.record(
      z.string(),
      shortened(
        z.strictObject({
          positive: builders(text('C1+')),
          negative: builders(text('C1-')),
          nominal: builders(speakerLoad),
          'direct-current': builders(quantityAbove('resistance').optional()),
        }),
        { form: 'coil' },
      ),
    ),
    { positive: 'names', negative: 'names' },
  ),
  /** Power that the whole speaker may take for long. */
  power: builders(quantityWithin('power', { above: 0, most: 20_000 })),
  'lowest-frequency': builders(audible.optional()),
  /** Diameter of the hole that it goes into; its frame covers the rim, its height is its mounting depth. */
  'cut-out': builders(quantityWithin('length', { above: 0, most: 0.6 }).optional()),
  /** Volumes of box that its maker allows, by how the box loads it. */
  boxes: z.partialRecord(boxLoadingSchema, volumes).optional(),
});

/** A coil is a load of an amplifier, not of the 12 V network. */
export const speaker = equipmentKind('Speakers', speakerSchema, () => []);
