import { z } from 'zod';
import { builders } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { extent, quantity, quantityWithin } from '../fields.ts';
import { kindField, stockKind } from './kind.ts';

export const coveringSchema = z
  .strictObject({
    kind: kindField('covering'),
    ...partBase,
    form: builders(z.enum(['loom', 'braided-sleeve', 'heat-shrink', 'tape', 'conduit']), 'What it is.', {
      example: 'loom',
    }),
    bore: builders(
      quantityWithin('length', { above: 0, most: 0.15 }),
      'Across its inside, before it shrinks.',
      { example: '13 mm' },
    ),
    'shrunk-bore': builders(extent.optional(), 'Of heat-shrink: across its inside when it has shrunk.', {
      example: '4 mm',
    }),
    withstands: builders(quantity('temperature'), 'The temperature that it stands.', { example: '105 C' }),
  })
  .refine((part) => (part['shrunk-bore'] ?? 0) <= part.bore, {
    error: 'is above the bore before it shrinks',
    path: ['shrunk-bore'],
  });

export const covering = stockKind('Coverings', coveringSchema);
