import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantityAbove, quantityWithin } from '../fields.ts';
import { suppressionSchema } from '../vocabulary.ts';
import { equipmentBase, equipmentKind, supplyRangeSchema, terminalsOf } from './kind.ts';

/** A relay that joins two batteries while the engine runs and parts them while it does not. */
export const isolatingRelaySchema = z
  .strictObject({
    kind: everyone(z.literal('isolating-relay')),
    ...equipmentBase,
    /** What closes it: a coil that the vehicle feeds while the engine runs, or the charging voltage that it sees itself. */
    'pulls-in': builders(z.enum(['coil', 'charging-voltage'])),
    /** What its coil draws; of one that sees the voltage itself, what it draws while closed. */
    'coil-current': builders(quantityWithin('current', { above: 0, most: 20 })),
    'coil-range': supplyRangeSchema.optional(),
    suppression: builders(suppressionSchema),
    /** What its contact carries for as long as the engine runs. */
    'continuous-current': builders(quantityAbove('current')),
    /** What its contact carries for a while, and for how long, by its maker. */
    'short-time': z
      .strictObject({
        current: builders(quantityAbove('current')),
        seconds: builders(quantityWithin('time', { least: 0.1, most: 3600 })),
      })
      .optional(),
    /** Whether it stays open, or opens, while the starter turns. */
    'opens-while-cranking': builders(z.boolean().default(false)),
    /** Resistance of its contact; next to none where the maker is silent, so that no share of a current is told too small. */
    resistance: builders(quantityWithin('resistance', { most: 0.1 }).optional()),
  })
  .refine((part) => (part['short-time']?.current ?? Number.POSITIVE_INFINITY) >= part['continuous-current'], {
    error: 'is below what the contact carries for as long as the engine runs',
    path: ['short-time', 'current'],
  });

/** Its contact carries battery current while the engine runs; its coil belongs to the turn-on circuit. */
export const isolatingRelay = equipmentKind('Isolating relays', isolatingRelaySchema, (part) => {
  const [from, to] = terminalsOf(part.terminals, 'relay-contact');
  const { resistance: ohm } = part;
  return from && to
    ? [{ kind: 'joint', from, to, closed: 'engine-on', ...(ohm === undefined ? {} : { ohm }) }]
    : [];
});
