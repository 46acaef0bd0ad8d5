import { z } from 'zod';
import { builders } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { extent, quantity, quantityAbove, wireSize } from '../fields.ts';
import { colourSchema, conductorMaterialSchema, conductorRoleSchema } from '../vocabulary.ts';
import { kindField, stockKind } from './kind.ts';

export const wireSchema = z.strictObject({
  kind: kindField('wire'),
  ...partBase,
  size: builders(wireSize, 'Size of its conductor.', { example: '4 AWG' }),
  material: builders(conductorMaterialSchema.default('copper'), 'What its conductor is made of.'),
  insulation: builders(
    quantity('temperature').optional(),
    'The temperature that its insulation is marked with.',
    { example: '105 C', leftOut: '{insulation-unmarked}' },
  ),
  colour: builders(colourSchema, 'Colour of its insulation, by the letters of IEC 60757.', { example: 'RD' }),
  for: builders(
    z.array(conductorRoleSchema).min(1),
    'What the shop uses the reel for. Only reels for the purpose are chosen.',
    { example: ['power'] },
  ),
  'outside-diameter': builders(
    extent.optional(),
    'Over its insulation. Bends, looms and grommets go by it.',
    { example: '10 mm' },
  ),
  measured: builders(
    quantityAbove('lineResistance').optional(),
    'Measured resistance of a length, where its copper is short of its gauge.',
    { example: '1.1 mohm/m' },
  ),
});

export const wire = stockKind('Wire', wireSchema);
