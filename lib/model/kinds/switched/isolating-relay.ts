import { z } from 'zod';
import { builders } from '../../audience.ts';
import { quantityAbove, quantityWithin } from '../../fields.ts';
import { suppressionSchema } from '../../vocabulary.ts';
import { section } from '../../writing/field-text.ts';
import { equipmentBase } from '../fields/equipment.ts';
import { supplyRangeSchema } from '../fields/supply.ts';
import { equipmentKind, kindField, terminalsOf } from '../kind.ts';

/** A relay that joins two batteries while the engine runs and parts them while it does not. */
export const isolatingRelaySchema = z
  .strictObject({
    kind: kindField('isolating-relay'),
    ...equipmentBase,
    'pulls-in': builders(
      z.enum(['coil', 'charging-voltage']),
      'What closes it: a coil that the vehicle feeds while the engine runs, or the charging voltage that it sees itself.',
      { example: 'charging-voltage' },
    ),
    'coil-current': builders(
      quantityWithin('current', { above: 0, most: 20 }),
      'What its coil draws; of one that sees the voltage itself, what it draws while closed.',
      { example: '0.4 A' },
    ),
    'coil-range': section(supplyRangeSchema.optional(), 'The voltages that its coil is made for.', {
      leftOut: 'it counts as made for a 12 V system',
    }),
    suppression: builders(suppressionSchema, 'What takes up the kick of its coil as it opens.', {
      example: 'diode',
    }),
    'continuous-current': builders(
      quantityAbove('current'),
      'What its contact carries for as long as the engine runs.',
      { example: '140 A' },
    ),
    'short-time': section(
      z
        .strictObject({
          current: builders(quantityAbove('current'), 'The current that it carries for a while.', {
            example: '300 A',
          }),
          seconds: builders(quantityWithin('time', { least: 0.1, most: 3600 }), 'For how long.', {
            example: '30 s',
          }),
        })
        .optional(),
      'What its contact carries for a while, by its maker.',
    ),
    'opens-while-cranking': builders(
      z.boolean().default(false),
      'Whether it stays open, or opens, while the starter turns.',
    ),
    resistance: builders(
      quantityWithin('resistance', { most: 0.1 }).optional(),
      'Resistance of its contact.',
      { example: '0.3 mohm', leftOut: 'next to none, so that no share of a current is told too small' },
    ),
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
