import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantity, quantityAbove, quantityWithin, text } from '../fields.ts';
import { rows, shortened, span } from '../short-forms/short-form.ts';
import { section } from '../writing/field-text.ts';
import { boxLoadingSchema } from './enclosure.ts';
import { audible, speakerLoad } from './fields/bounds.ts';
import { equipmentBase } from './fields/equipment.ts';
import { equipmentKind, kindField } from './kind.ts';

const volumes = span(
  z.strictObject({
    from: builders(quantity('volume'), 'The smallest volume.', { example: '18 L' }),
    to: builders(quantity('volume'), 'The largest volume.', { example: '28 L' }),
  }),
);

export const speakerSchema = z.strictObject({
  kind: kindField('speaker'),
  ...equipmentBase,
  band: everyone(
    z.enum(['tweeter', 'midrange', 'midbass', 'full-range', 'coaxial', 'subwoofer']),
    'What it plays. The rules that protect it go by it.',
    { example: 'midbass' },
  ),
  coils: section(
    rows(
      z.record(
        z.string(),
        shortened(
          z.strictObject({
            positive: builders(text('C1+'), 'The terminal of its positive end.'),
            negative: builders(text('C1-'), 'The terminal of its negative end.'),
            nominal: builders(speakerLoad, 'Its nominal resistance, as it is rated.', { example: '4 ohm' }),
            'direct-current': builders(
              quantityAbove('resistance').optional(),
              'What a meter reads across it.',
              {
                example: '3.4 ohm',
                leftOut: 'between {coil-dc-least} and {coil-dc-most} of its nominal resistance',
              },
            ),
            inductance: builders(
              quantityWithin('inductance', { above: 0, most: 20e-3 }).optional(),
              'Its inductance, as its maker measured it. A tweeter beside it on one channel is held against the amplifier with it.',
              {
                example: '0.35 mH',
                leftOut: 'none, so that it lifts the load of the channel at no frequency',
              },
            ),
          }),
          { form: 'coil' },
        ),
      ),
      { positive: 'names', negative: 'names' },
    ),
    'Its voice coils by their names.',
    { name: 'C1' },
  ),
  power: builders(
    quantityWithin('power', { above: 0, most: 20_000 }),
    'Power that the whole speaker may take for long.',
    { example: '80 W' },
  ),
  'lowest-frequency': builders(audible.optional(), 'The lowest frequency that its maker lets it play.', {
    example: '60 Hz',
  }),
  'cut-out': builders(
    quantityWithin('length', { above: 0, most: 0.6 }).optional(),
    'Diameter of the hole that it goes into. Its frame covers the rim.',
    { example: '5 1/8 in' },
  ),
  boxes: section(
    z.partialRecord(boxLoadingSchema, volumes).optional(),
    'Volumes of box that its maker allows, by how the box loads it.',
    { example: { sealed: { from: '18 L', to: '28 L' } } },
  ),
});

/** A coil is a load of an amplifier, not of the 12 V network. */
export const speaker = equipmentKind('Speakers', speakerSchema, () => []);
