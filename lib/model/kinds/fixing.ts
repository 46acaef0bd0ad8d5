import { z } from 'zod';
import { builders } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { extent, quantity, quantityWithin, text } from '../fields.ts';
import { kindField, stockKind } from './kind.ts';

export const fixingSchema = z.strictObject({
  kind: kindField('fixing'),
  ...partBase,
  form: builders(
    z.enum([
      'wood-screw',
      'machine-screw',
      'bolt',
      'nut',
      'rivet-nut',
      'spacer',
      'rubber-bush',
      'threaded-insert',
      'washer',
      'packing',
      'tie',
      'strap',
      'bracket',
      'adhesive',
      'thread-lock',
    ]),
    'What it is. A bush of rubber below a board is a rubber-bush, not a spacer: nothing is tightened down on it.',
    { example: 'bolt' },
  ),
  thread: builders(text('#8').optional(), 'Its thread, as the trade calls it.', { example: 'M6' }),
  length: builders(
    extent.optional(),
    'Its length under the head; of a spacer or a bush, what it adds to a height.',
    {
      example: '40 mm',
    },
  ),
  thickness: builders(
    quantityWithin('length', { above: 0, most: 0.015 }).optional(),
    'Of a washer or packing: what it adds to a height. Without it, it is not packed with.',
    { example: '1.6 mm' },
  ),
  serrated: builders(
    z.boolean().default(false),
    'Of a washer: whether its teeth bite into the metal, as below a lug on the body. It is not packed with.',
    { example: true },
  ),
  pilot: builders(extent.optional(), 'Hole that its thread bites in.', { example: '7/64 in' }),
  clearance: builders(extent.optional(), 'Hole that it passes freely.', { example: '6.6 mm' }),
  torque: builders(quantityWithin('torque', { above: 0, most: 120 }).optional(), 'What it is tightened to.', {
    example: '10 N m',
  }),
  'bears-on': builders(
    quantityWithin('length', { above: 0, most: 0.08 }).optional(),
    'Across the face that its head, washer or end bears on.',
    { example: '18 mm', leftOut: 'twice its thread, as an ordinary washer' },
  ),
  holds: builders(
    quantity('mass').optional(),
    'Load along its axis that it may hold, in kilograms at rest.',
    { example: '120 kg' },
  ),
  withstands: builders(
    quantityWithin('temperature', { least: 40, most: 500 }).optional(),
    'The temperature that a tie stands.',
    { example: '85 C', leftOut: '{tie-temperature}' },
  ),
});

export const fixing = stockKind('Fixings', fixingSchema);
