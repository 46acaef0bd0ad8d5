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

/** What a line output of an amplifier passes on of what arrives at its inputs. */
const passedOn = z.strictObject({
  of: section(
    z.record(
      z.string(),
      builders(
        positiveNumber.max(20, 'is more than a line output raises; write a share such as 0.25'),
        'How much of the voltage at that input comes out: 1 where it comes out as it comes in, 0.25 for a quarter of it.',
        { example: 0.25 },
      ),
    ),
    'The inputs that it carries, each with the share of its voltage that comes out.',
    { name: 'IN1', example: { IN1: 1 } },
  ),
  tap: builders(
    z.enum(['inputs', 'gain', 'filters']),
    'Behind what it is taken: `inputs` ahead of gain and filters, `gain` behind the gain control, `filters` behind the filters as well. Only what is taken at the inputs has a level that is known before the gain is set.',
    { example: 'inputs' },
  ),
});
export type PassedOn = z.output<typeof passedOn>;

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
  passes: section(
    z.record(z.string(), passedOn).default({}),
    'Its line outputs, by their terminals, with what of its inputs each passes on to the next amplifier.',
    {
      name: 'OUT1',
      example: { OUT1: { of: { IN1: 1 }, tap: 'inputs' } },
      leftOut: 'nothing tells what a line output gives, and it is to be measured',
    },
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
