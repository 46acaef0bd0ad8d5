import { z } from 'zod';
import { builders } from '../../audience.ts';
import { quantityWithin } from '../../fields.ts';
import { shortened } from '../../short-forms/short-form.ts';
import { speakerLoad } from './bounds.ts';

const ratedPower = quantityWithin('power', { above: 0, most: 20_000 });

/** Rated power into each load that a maker publishes, smallest load last or first as written. */
export const powers = shortened(
  z
    .array(
      z.strictObject({
        load: builders(speakerLoad, 'The load that its maker rates it into.', { example: '4 ohm' }),
        power: builders(
          ratedPower,
          'What it gives into that load for long, at 14.4 V unless its maker says otherwise.',
          { example: '75 W' },
        ),
      }),
    )
    .min(1),
  { form: 'table', key: 'load', value: 'power' },
);
export type RatedPowers = z.output<typeof powers>;
