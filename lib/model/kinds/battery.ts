import { z } from 'zod';
import { builders } from '../audience.ts';
import { quantityAbove, quantityWithin } from '../fields.ts';
import { reserveEnd } from '../reserve-end.ts';
import { systemVoltageField } from '../system-voltage.ts';
import { fittedBase } from './fields/equipment.ts';
import { equipmentKind, kindField, terminalsOf } from './kind.ts';

export const batterySchema = z.strictObject({
  kind: kindField('battery'),
  ...fittedBase,
  chemistry: builders(
    z.enum(['flooded', 'absorbed-glass-mat', 'lithium']),
    'What is in it. Its resistance, its reserve and where it may stand follow from it.',
    { example: 'flooded' },
  ),
  voltage: builders(
    systemVoltageField.optional(),
    'Its nominal voltage. Two of 12 V in series are written as one of 24 V: resistance of both, capacity of one.',
    { example: '12 V', leftOut: '12 V' },
  ),
  capacity: builders(quantityAbove('charge'), 'Its capacity at the twenty-hour rate.', { example: '70 Ah' }),
  'cold-cranking': builders(
    quantityAbove('current').optional(),
    'Cold-cranking current of a starter battery. One that does not say it starts no engine.',
    { example: '640 A' },
  ),
  'short-circuit': builders(
    quantityAbove('current').optional(),
    'What it gives into a dead short at its posts, charged, by its maker. It decides what a fuse must interrupt.',
    { example: '2500 A' },
  ),
  resistance: builders(quantityWithin('resistance', { most: 1 }).optional(), 'Its internal resistance.', {
    example: '5 mohm',
    leftOut: 'by its chemistry: house rules',
  }),
  'reserve-end': builders(reserveEnd.optional(), 'The charge at which its reserve ends, by its maker.', {
    example: '50 %',
    leftOut: '{reserve-end}',
  }),
});

export const battery = equipmentKind('Batteries', batterySchema, (part) => {
  const [from] = terminalsOf(part.terminals, 'source-negative');
  const [to] = terminalsOf(part.terminals, 'source-positive');
  return from && to ? [{ kind: 'source', source: 'battery', from, to }] : [];
});
