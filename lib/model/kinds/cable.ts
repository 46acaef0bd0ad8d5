import { z } from 'zod';
import { builders } from '../audience.ts';
import { filterSchema } from '../content/filter.ts';
import { partBase } from '../content/part-base.ts';
import { extent, quantity, text, wireSize } from '../fields.ts';
import { colourSchema, conductorRoleSchema, vehicleSideSchema } from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';
import { kindField, stockKind } from './kind.ts';

export const cableSchema = z.strictObject({
  kind: kindField('cable'),
  ...partBase,
  form: builders(z.enum(['multi-conductor', 'twisted-pair', 'coaxial', 'data']), 'How its conductors lie.', {
    example: 'twisted-pair',
  }),
  conductors: section(
    z.record(
      z.string(),
      z.strictObject({
        size: builders(wireSize, 'Size of the conductor.', { example: '16 AWG' }),
        colour: builders(colourSchema, 'Colour of its insulation, by the letters of IEC 60757.', {
          example: 'WH',
        }),
        side: builders(
          vehicleSideSchema.optional(),
          'Of a lead with a conductor for each side: which one it is.',
          { example: 'left' },
        ),
      }),
    ),
    'Its conductors by their names, as links call them.',
    { name: 'white' },
  ),
  insulation: builders(
    quantity('temperature').optional(),
    'The temperature that its insulation is marked with.',
    { example: '80 C', leftOut: '{insulation-unmarked}' },
  ),
  for: builders(z.array(conductorRoleSchema).min(1), 'What the shop uses it for.', { example: ['signal'] }),
  'outside-diameter': builders(extent.optional(), 'Over its jacket.', { example: '6 mm' }),
  'made-length': builders(
    extent.optional(),
    'Length of a made-up lead, such as a phono lead. Cable that is cut from a reel has none.',
    { example: '12 ft' },
  ),
  plugs: builders(text('phono').optional(), 'What its ends plug into.'),
  filter: section(
    filterSchema.optional(),
    'Of a made-up line lead with a passive filter in it: that filter. It stands in the path of what the lead feeds.',
    { leftOut: 'it lets everything through' },
  ),
  'y-lead': builders(
    z.boolean().default(false),
    'Whether all of its conductors begin at one plug: one output then feeds as many inputs.',
  ),
});

export const cable = stockKind('Cable', cableSchema);
