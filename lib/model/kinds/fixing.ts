import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { extent, quantity, quantityWithin, text } from '../fields.ts';
import { stockKind } from './kind.ts';

export const fixingSchema = z.strictObject({
  kind: everyone(z.literal('fixing')),
  ...partBase,
  form: builders(
    z.enum([
      'wood-screw',
      'machine-screw',
      'bolt',
      'rivet-nut',
      'spacer',
      'threaded-insert',
      'washer',
      'packing',
      'tie',
      'adhesive',
    ]),
  ),
  thread: builders(text('#8').optional()),
  /** Of a spacer: what it adds to a height. */
  length: builders(extent.optional()),
  /** Of a washer or packing: what it adds to a height. Without it, it is not packed with. */
  thickness: builders(quantityWithin('length', { above: 0, most: 0.015 }).optional()),
  pilot: builders(extent.optional()),
  clearance: builders(extent.optional()),
  torque: builders(quantityWithin('torque', { above: 0, most: 120 }).optional()),
  /** Across the face that its head, washer or end bears on. Left out: twice its thread, as an ordinary washer. */
  'bears-on': builders(quantityWithin('length', { above: 0, most: 0.08 }).optional()),
  /** Load along its axis that it may hold, in kilograms at rest. */
  holds: builders(quantity('mass').optional()),
  /** Temperature that a tie stands; 85 C where its maker is silent. */
  withstands: builders(quantityWithin('temperature', { least: 40, most: 500 }).optional()),
});

export const fixing = stockKind('Fixings', fixingSchema);
