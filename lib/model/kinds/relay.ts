import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantity } from '../fields.ts';
import { equipmentBase, equipmentKind } from './kind.ts';

export const relaySchema = z.strictObject({
  kind: everyone(z.literal('relay')),
  ...equipmentBase,
  'coil-current': builders(quantity('current')),
  'contact-current': builders(quantity('current')),
  suppression: builders(z.enum(['diode', 'resistor', 'none'])),
});

/** Coil and contact belong to the turn-on circuit, which is summed apart from the feed network. */
export const relay = equipmentKind('Relays', relaySchema, () => []);
