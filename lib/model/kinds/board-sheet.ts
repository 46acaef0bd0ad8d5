import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { quantity, quantityAbove, quantityWithin } from '../fields.ts';
import { sheetGrainSchema } from '../vocabulary.ts';
import { kindField, stockKind } from './kind.ts';

export const boardSheetSchema = z
  .strictObject({
    kind: kindField('board-sheet'),
    ...partBase,
    material: everyone(
      z.enum(['birch-plywood', 'fibreboard', 'polyethylene', 'expanded-pvc', 'abs', 'acrylic', 'aluminium']),
      'What it is made of. Search filters by it.',
      { example: 'birch-plywood' },
    ),
    thickness: builders(quantity('length'), 'Its thickness, measured.', { example: '12 mm' }),
    width: builders(quantity('length'), 'Width of a whole sheet.', { example: '60 in' }),
    height: builders(quantity('length'), 'Height of a whole sheet.', { example: '60 in' }),
    density: builders(quantityWithin('density', { least: 20, most: 20_000 }), 'What a volume of it weighs.', {
      example: '680 kg/m3',
    }),
    modulus: builders(
      quantityAbove('stress'),
      'Modulus of elasticity in bending; of a sheet with a grain, along the grain of its face.',
      { example: '10.7 GPa' },
    ),
    'modulus-across': builders(quantityAbove('stress').optional(), 'The same across the grain.', {
      example: '6.8 GPa',
      leftOut: 'plywood {plywood-across} of its modulus, any other sheet alike both ways',
    }),
    'shear-modulus': builders(
      quantityAbove('stress').optional(),
      'Shear modulus of the panel in its plane.',
      {
        example: '0.62 GPa',
        leftOut: 'plywood by the house rule plywood-shear, any other sheet from its modulus',
      },
    ),
    'long-term-modulus': builders(
      quantityAbove('stress').optional(),
      'What is left of the modulus after months of load.',
      { example: '5 GPa', leftOut: 'it does not creep' },
    ),
    crushing: builders(
      quantityWithin('stress', { least: 1e5, most: 1e9 }).optional(),
      'Stress at which a washer crushes it.',
      { example: '6 MPa', leftOut: 'by its material: house rules' },
    ),
    'shear-strength': builders(
      quantityWithin('stress', { least: 1e5, most: 1e9 }).optional(),
      'Stress at which a washer is punched through it.',
      { example: '9 MPa', leftOut: 'by its material: house rules' },
    ),
    withstands: builders(quantity('temperature').optional(), 'The temperature that it stands.', {
      example: '70 C',
      leftOut: 'no zone of a vehicle is too warm for it',
    }),
    grain: builders(
      sheetGrainSchema.optional(),
      'Along which side of the sheet the grain of its face runs.',
      { example: 'width', leftOut: 'it has none, and pieces lie either way' },
    ),
    sealed: builders(
      z.boolean().default(false),
      'Whether it is sealed against water on its faces and edges.',
    ),
  })
  .superRefine((part, ctx) => {
    // Along the grain a sheet is at its stiffest; no load of months makes it stiffer, and G = E / 2(1 + nu) is below E.
    for (const key of ['modulus-across', 'shear-modulus', 'long-term-modulus'] as const)
      if ((part[key] ?? 0) > part.modulus)
        ctx.addIssue({ code: 'custom', path: [key], message: 'is above the modulus of the sheet itself' });
  });

export const boardSheet = stockKind('Board sheets', boardSheetSchema);
