import { z } from 'zod';
import { builders } from '../../audience.ts';
import { quantityWithin } from '../../fields.ts';
import { section } from '../../writing/field-text.ts';
import { equipmentBase } from '../fields/equipment.ts';
import { supplyRangeSchema } from '../fields/supply.ts';
import { equipmentKind, kindField } from '../kind.ts';

/** What moves the air of a space. It has no switch of its own: its positive terminal is a turn-on input. */
export const fanSchema = z.strictObject({
  kind: kindField('fan'),
  ...equipmentBase,
  range: section(supplyRangeSchema.optional(), 'The supply voltages that its maker made it for.', {
    leftOut: 'it counts as made for a 12 V system',
  }),
  airflow: builders(
    quantityWithin('airflow', { least: 5 / 3600, most: 600 / 3600 }),
    'Air that it moves with nothing before it and behind it, by its maker. In place it counts with {fan-delivers} of that.',
    { example: '60 m3/h' },
  ),
  draw: builders(
    quantityWithin('current', { least: 0.02, most: 5 }),
    'What it draws. It is counted among what its turn-on lead drives.',
    { example: '150 mA' },
  ),
});

/** Its current comes through a turn-on lead, and is summed there. */
export const fan = equipmentKind('Fans', fanSchema, () => []);
