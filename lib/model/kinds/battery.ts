import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantityAbove, quantityWithin } from '../fields.ts';
import { reserveEnd } from '../reserve-end.ts';
import { systemVoltageField } from '../system-voltage.ts';
import { equipmentBase, equipmentKind, terminalsOf } from './kind.ts';

export const batterySchema = z.strictObject({
  kind: everyone(z.literal('battery')),
  ...equipmentBase,
  chemistry: builders(z.enum(['flooded', 'absorbed-glass-mat', 'lithium'])),
  /** Nominal voltage. Two of 12 V in series are written as one of 24 V: resistance of both, capacity of one. */
  voltage: builders(systemVoltageField.optional()),
  capacity: builders(quantityAbove('charge')),
  /** Of a starter battery. One that does not say it starts no engine. */
  'cold-cranking': builders(quantityAbove('current').optional()),
  /** What it gives into a dead short at its posts, charged, by its maker: decides what a fuse must interrupt. */
  'short-circuit': builders(quantityAbove('current').optional()),
  /** Internal resistance; a house rule by chemistry applies where the maker is silent. */
  resistance: builders(quantityWithin('resistance', { most: 1 }).optional()),
  /** Charge at which its reserve ends, by its maker; the house rule holds where it is left out. */
  'reserve-end': builders(reserveEnd.optional()),
});

export const battery = equipmentKind('Batteries', batterySchema, (part) => {
  const [from] = terminalsOf(part.terminals, 'source-negative');
  const [to] = terminalsOf(part.terminals, 'source-positive');
  return from && to ? [{ kind: 'source', source: 'battery', from, to }] : [];
});
