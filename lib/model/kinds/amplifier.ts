import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { positiveNumber, quantityWithin, text } from '../fields.ts';
import { rows, shortened } from '../short-forms/short-form.ts';
import { speakerLoad } from './bounds.ts';
import { equipmentBase, equipmentKind, supplyElement, supplySchema } from './kind.ts';

const ratedPower = quantityWithin('power', { above: 0, most: 20_000 });

/** Rated power into each load that the maker publishes, smallest load last or first as written. */
const powers = shortened(
  z.array(z.strictObject({ load: builders(speakerLoad), power: builders(ratedPower) })).min(1),
  { form: 'table', key: 'load', value: 'power' },
);

const channel = shortened(
  z.strictObject({
    positive: builders(text('CH1+')),
    negative: builders(text('CH1-')),
    /** The signal input that drives it. */
    input: builders(text('IN1')),
    /** Further inputs that are added to it, such as the right one of a bass amplifier. */
    summed: builders(z.array(text('IN2')).default([])),
    minimum: builders(speakerLoad),
    powers,
  }),
  { form: 'channel' },
);

/** What runs along a row of channels or of bridges. */
const alongChannels = { output: 'names', positive: 'names', negative: 'names', input: 'names' } as const;

export const amplifierSchema = z.strictObject({
  kind: everyone(z.literal('amplifier')),
  ...equipmentBase,
  supply: supplySchema,
  /** Damping factor that its maker states, and the load that it holds for. */
  damping: z
    .strictObject({
      factor: builders(
        positiveNumber.max(5000, 'is more than any amplifier has; write a number such as 200'),
      ),
      at: builders(speakerLoad),
    })
    .optional(),
  channels: rows(z.record(z.string(), channel), alongChannels),
  /** Pairs of channels that may be bridged, by the two names joined with a plus: `1+2`. */
  bridges: rows(z.record(z.string(), channel), alongChannels).default({}),
});

export const amplifier = equipmentKind('Amplifiers', amplifierSchema, (part) =>
  supplyElement(part.terminals, part.supply.type),
);
