import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantityAbove, quantityWithin } from '../fields.ts';
import { suppressionSchema } from '../vocabulary.ts';
import { equipmentBase, equipmentKind, supplyRangeSchema, terminalsOf } from './kind.ts';

export const relaySchema = z.strictObject({
  kind: everyone(z.literal('relay')),
  ...equipmentBase,
  /** The voltages that its coil is made for; where its maker is silent it counts as made for a 12 V system. */
  'coil-range': supplyRangeSchema.optional(),
  'coil-current': builders(quantityWithin('current', { above: 0, most: 5 })),
  'contact-current': builders(quantityAbove('current')),
  suppression: builders(suppressionSchema),
});

/** The contact passes what feeds it on; the coil belongs to the turn-on circuit, which is summed apart. */
export const relay = equipmentKind('Relays', relaySchema, (part) => {
  const [from, to] = terminalsOf(part.terminals, 'relay-contact');
  return from && to ? [{ kind: 'joint', from, to }] : [];
});
