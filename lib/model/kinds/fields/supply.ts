import { z } from 'zod';
import { builders } from '../../audience.ts';
import { count, quantity, quantityAbove, quantityWithin } from '../../fields.ts';
import { span } from '../../short-forms/short-form.ts';
import { supplyTypeSchema } from '../../vocabulary.ts';
import { section } from '../../writing/field-text.ts';
import { efficiency } from './bounds.ts';

/** The supply voltages that a part is made for, lowest to highest, by its maker. */
export const supplyRangeSchema = span(
  z.strictObject({
    from: builders(quantityAbove('voltage'), 'The lowest voltage that it is made for.', {
      example: '10.5 V',
    }),
    to: builders(quantityAbove('voltage'), 'The highest voltage that it is made for.', { example: '16 V' }),
  }),
);

/** How an electronic device is fed. */
export const supplySchema = section(
  z.strictObject({
    range: section(supplyRangeSchema.optional(), 'The supply voltages that its maker made it for.', {
      leftOut: 'it counts as made for a 12 V system',
    }),
    type: builders(
      supplyTypeSchema,
      'How its current follows its voltage: `regulated` draws more as the voltage falls, `unregulated` less, about with its square.',
      { example: 'regulated' },
    ),
    fuse: builders(
      quantityAbove('current'),
      "The maker's fuse for the whole device; several fuses on its chassis add. Where none sits in the chassis, no fuse before the device is larger.",
      { example: '50 A' },
    ),
    'fuses-fitted': builders(
      count.max(8, 'is more than any device has; write how many fuses there are').default(0),
      'How many fuses sit in its own chassis. With one or more, the fuse before it protects the conductor alone, and only the conductor bounds it where `fuse-before:` tells nothing else.',
      { example: 2 },
    ),
    'fuse-before': builders(
      quantityAbove('current').optional(),
      'The largest fuse before it, at the battery or at its way, that its maker allows.',
      {
        example: '80 A',
        leftOut:
          'its `fuse:` where it has none in its chassis; with fuses aboard the conductor alone bounds it',
      },
    ),
    'cut-out': builders(
      quantity('voltage').optional(),
      'The voltage at its terminals below which it switches itself off.',
      { example: '10.5 V', leftOut: '{cut-out}' },
    ),
    idle: builders(quantity('current').optional(), 'What it draws switched on, with no signal.', {
      example: '1.1 A',
      leftOut: 'by its class, {idle-class-ab} or {idle-class-d}',
    }),
    'music-current': builders(
      quantityAbove('current').optional(),
      'Of an amplifier: what it draws with music, at an eighth of its rated power and at `rated-at:`, as its maker measured it. Its efficiency there follows from it, and goes before the one that is written.',
      { example: '11 A', leftOut: 'by its efficiency at an eighth' },
    ),
    draw: builders(quantity('current').optional(), 'The whole draw of a device that drives no speakers.', {
      example: '0.9 A',
    }),
    'amplifier-class': builders(
      z.enum(['class-ab', 'class-d', 'bass-class-d']).optional(),
      'What its output stage is. Efficiency and idle draw follow from it where its maker is silent.',
      { example: 'class-d' },
    ),
    efficiency: section(
      z
        .strictObject({
          full: builders(efficiency, 'At rated power.', { example: '75 %' }),
          eighth: builders(efficiency.optional(), 'At an eighth of rated power, as music draws it.', {
            example: '55 %',
            leftOut: 'by its class, and at most that at rated power',
          }),
        })
        .refine(
          ({ full, eighth }) => eighth === undefined || full >= eighth,
          'has less at full power than at an eighth: no amplifier does; they are swapped',
        )
        .optional(),
      'Output over input, as its maker measured it.',
      { leftOut: 'by its class: house rules' },
    ),
    'rated-at': builders(
      quantityWithin('voltage', { least: 5, most: 36 }).optional(),
      'Of an amplifier: the supply voltage at which its rated powers were measured.',
      { example: '14.4 V', leftOut: '{voltage-rated}' },
    ),
    'turn-on-draw': builders(
      quantity('current').optional(),
      'What its turn-on terminal draws. The draws on one output are summed against what that output gives.',
      { example: '60 mA', leftOut: '{turn-on-draw}' },
    ),
    'key-off': builders(quantity('current').optional(), 'What it draws with everything switched off.', {
      example: '1.5 mA',
    }),
  }),
  'How it is fed from the 12 V network.',
);
export type Supply = z.output<typeof supplySchema>;

/** The largest fuse (A) that the maker of a device allows before it; null where the conductor alone bounds it. */
export function fuseCeilingA(supply: Pick<Supply, 'fuse' | 'fuses-fitted' | 'fuse-before'>): number | null {
  return supply['fuse-before'] ?? (supply['fuses-fitted'] > 0 ? null : supply.fuse);
}
