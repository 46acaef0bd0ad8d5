import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { quantity, quantityAbove, quantityWithin } from '../fields.ts';
import { sheetGrainSchema } from '../vocabulary.ts';
import { stockKind } from './kind.ts';

export const boardSheetSchema = z
  .strictObject({
    kind: everyone(z.literal('board-sheet')),
    ...partBase,
    /** Search filters by it. */
    material: everyone(
      z.enum(['birch-plywood', 'fibreboard', 'polyethylene', 'expanded-pvc', 'abs', 'acrylic', 'aluminium']),
    ),
    thickness: builders(quantity('length')),
    width: builders(quantity('length')),
    height: builders(quantity('length')),
    density: builders(quantityWithin('density', { least: 20, most: 20_000 })),
    /** Modulus of elasticity in bending; of a sheet with a grain, along the grain of its face. */
    modulus: builders(quantityAbove('stress')),
    /** Across the grain. Left out: plywood by the house rule, any other sheet alike both ways. */
    'modulus-across': builders(quantityAbove('stress').optional()),
    /** Shear modulus of the panel in its plane. Left out: plywood by the house rule, any other sheet from its modulus. */
    'shear-modulus': builders(quantityAbove('stress').optional()),
    /** What is left of the modulus after months of load. Left out: it does not creep. */
    'long-term-modulus': builders(quantityAbove('stress').optional()),
    /** Stress at which a washer crushes it, and at which one is punched through it; the house rules where left out. */
    crushing: builders(quantityWithin('stress', { least: 1e5, most: 1e9 }).optional()),
    'shear-strength': builders(quantityWithin('stress', { least: 1e5, most: 1e9 }).optional()),
    /** Temperature that it stands. Left out: no zone of a vehicle is too warm for it. */
    withstands: builders(quantity('temperature').optional()),
    /** Along which side of the sheet the grain of its face runs. Left out: it has none, and pieces lie either way. */
    grain: builders(sheetGrainSchema.optional()),
    sealed: builders(z.boolean().default(false)),
  })
  .superRefine((part, ctx) => {
    // Along the grain a sheet is at its stiffest; no load of months makes it stiffer, and G = E / 2(1 + nu) is below E.
    for (const key of ['modulus-across', 'shear-modulus', 'long-term-modulus'] as const)
      if ((part[key] ?? 0) > part.modulus)
        ctx.addIssue({ code: 'custom', path: [key], message: 'is above the modulus of the sheet itself' });
  });

export const boardSheet = stockKind('Board sheets', boardSheetSchema);
