import { z } from 'zod';
import { builders } from '../../audience.ts';
import { quantityAbove, quantityWithin } from '../../fields.ts';
import { suppressionSchema } from '../../vocabulary.ts';
import { section } from '../../writing/field-text.ts';
import { equipmentBase } from '../fields/equipment.ts';
import { supplyRangeSchema } from '../fields/supply.ts';
import { equipmentKind, kindField, terminalsOf } from '../kind.ts';

export const relaySchema = z.strictObject({
  kind: kindField('relay'),
  ...equipmentBase,
  'coil-range': section(supplyRangeSchema.optional(), 'The voltages that its coil is made for.', {
    leftOut: 'it counts as made for a 12 V system',
  }),
  'coil-current': builders(quantityWithin('current', { above: 0, most: 5 }), 'What its coil draws.', {
    example: '150 mA',
  }),
  'contact-current': builders(quantityAbove('current'), 'What its contact carries for long.', {
    example: '30 A',
  }),
  suppression: builders(suppressionSchema, 'What takes up the kick of its coil as it opens.', {
    example: 'diode',
  }),
});

/** The contact passes what feeds it on; the coil belongs to the turn-on circuit, which is summed apart. */
export const relay = equipmentKind('Relays', relaySchema, (part) => {
  const [from, to] = terminalsOf(part.terminals, 'relay-contact');
  return from && to ? [{ kind: 'joint', from, to }] : [];
});
