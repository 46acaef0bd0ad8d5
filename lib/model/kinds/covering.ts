import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { extent, quantity, quantityWithin } from '../fields.ts';
import { stockKind } from './kind.ts';

export const coveringSchema = z
  .strictObject({
    kind: everyone(z.literal('covering')),
    ...partBase,
    form: builders(z.enum(['loom', 'braided-sleeve', 'heat-shrink', 'tape', 'conduit'])),
    bore: builders(quantityWithin('length', { above: 0, most: 0.15 })),
    /** Bore after shrinking, for heat-shrink. */
    'shrunk-bore': builders(extent.optional()),
    withstands: builders(quantity('temperature')),
  })
  .refine((part) => (part['shrunk-bore'] ?? 0) <= part.bore, {
    error: 'is above the bore before it shrinks',
    path: ['shrunk-bore'],
  });

export const covering = stockKind('Coverings', coveringSchema);
