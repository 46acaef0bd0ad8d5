import { z } from 'zod';
import { builders } from '../audience.ts';
import { extent, quantity, quantityWithin } from '../fields.ts';
import { equipmentBase } from './fields/equipment.ts';
import { equipmentKind, kindField } from './kind.ts';

/** How the air of a box works on the cone. */
export const boxLoadingSchema = z.enum(['sealed', 'ported', 'band-pass']);

export const enclosureSchema = z.strictObject({
  kind: kindField('enclosure'),
  ...equipmentBase,
  volume: builders(quantity('volume'), 'Air inside it, less what its braces and its port take.', {
    example: '20 L',
  }),
  loading: builders(boxLoadingSchema, 'How its air works on the cone.', { example: 'sealed' }),
  tuning: builders(quantity('frequency').optional(), 'The frequency that its port is tuned to.', {
    example: '34 Hz',
  }),
  opening: builders(extent.optional(), 'Diameter of the hole for the speaker.', { example: '9 1/4 in' }),
  'lead-inside': builders(
    z
      .union([z.boolean(), quantityWithin('length', { above: 0, most: 5 })], {
        error: 'is neither true or false nor a length; write false, or how long the lead is, such as 400 mm',
      })
      .default(true),
    'Of a box with posts or a cup: whether the lead from there to its speaker lies in it. `false`: the job cuts it. A length: it lies in it and is so long, which counts in the loss of its channel at the size of the run to the box, and is cut from no reel.',
    { example: '400 mm' },
  ),
  'free-depth': builders(extent.optional(), 'What is free behind that hole.', { example: '6 in' }),
});

/** How long the lead is that came inside a box (m); null where none did, or nobody tells. */
export function suppliedInsideM({
  'lead-inside': inside,
}: Pick<z.output<typeof enclosureSchema>, 'lead-inside'>): number | null {
  return typeof inside === 'number' ? inside : null;
}

export const enclosure = equipmentKind('Enclosures', enclosureSchema, () => []);
