import { z } from 'zod';
import { builders } from '../audience.ts';
import { positiveNumber, text } from '../fields.ts';
import { names, rows, shortened } from '../short-forms/short-form.ts';
import { section } from '../writing/field-text.ts';
import { speakerLoad } from './fields/bounds.ts';
import { equipmentBase } from './fields/equipment.ts';
import { menuFilterFields } from './fields/menu-filters.ts';
import { powers } from './fields/powers.ts';
import { supplySchema } from './fields/supply.ts';
import { equipmentKind, kindField, supplyElement } from './kind.ts';

/** Two channels that drive one load between them: its ends are outputs of either. */
const bridge = z.strictObject({
  positive: builders(text('CH1+'), 'The terminal of its positive side.', { picture: 'channels' }),
  negative: builders(text('CH1-'), 'The terminal of its negative side.', { picture: 'channels' }),
  input: builders(text('IN1'), 'The signal input that drives it.', { picture: 'channels' }),
  summed: builders(
    z.array(text('IN2')).default([]),
    'Further inputs that are added to it, such as the right one of a bass amplifier.',
    { example: ['IN2'] },
  ),
  minimum: builders(speakerLoad, 'The smallest load that its maker allows on it.', { example: '2 ohm' }),
  powers: section(powers, 'Rated power into each load that its maker publishes.', {
    example: [
      { load: '4 ohm', power: '75 W' },
      { load: '2 ohm', power: '100 W' },
    ],
  }),
});
const channel = shortened(
  bridge.extend({
    'also-takes': builders(
      names(z.array(text('IN1'))).default([]),
      'Inputs of other channels that it takes inside, added up, where its own is left open. A job uses it so by `summed-inside:` of the device.',
      { example: ['IN1', 'IN2'], leftOut: 'it plays its own input alone' },
    ),
  }),
  { form: 'channel' },
);

/** What runs along a row of channels or of bridges. */
const alongBridges = { positive: 'names', negative: 'names', input: 'names' } as const;
const alongChannels = { output: 'names', ...alongBridges } as const;

export const amplifierSchema = z.strictObject({
  kind: kindField('amplifier'),
  ...equipmentBase,
  supply: supplySchema,
  ...menuFilterFields,
  damping: section(
    z
      .strictObject({
        factor: builders(
          positiveNumber.max(5000, 'is more than any amplifier has; write a number such as 200'),
          'The load over the resistance of its output.',
          { example: 120 },
        ),
        at: builders(speakerLoad, 'The load that it is stated for.', { example: '4 ohm' }),
      })
      .optional(),
    'Damping factor that its maker states, and the load that it holds for.',
  ),
  channels: section(
    rows(z.record(z.string(), channel), alongChannels),
    'Its channels by their names, as they are printed: `1`, `2`. A name of figures alone is put in quotes.',
    { name: '1', picture: 'channels' },
  ),
  bridges: section(
    rows(z.record(z.string(), bridge), alongBridges).default({}),
    'Pairs of channels that may be bridged, by the two names joined with a plus.',
    {
      name: '1+2',
      picture: 'channels',
      example: {
        '1+2': {
          positive: 'CH1+',
          negative: 'CH2-',
          input: 'IN1',
          minimum: '4 ohm',
          powers: [{ load: '4 ohm', power: '200 W' }],
        },
      },
    },
  ),
});

export const amplifier = equipmentKind('Amplifiers', amplifierSchema, (part) =>
  supplyElement(part.terminals, part.supply.type),
);
