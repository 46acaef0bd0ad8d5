import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { extent, quantity } from '../fields.ts';
import { partBase, stockKind } from './kind.ts';

export const coveringSchema = z.strictObject({
  kind: everyone(z.literal('covering')),
  ...partBase,
  form: builders(z.enum(['loom', 'braided-sleeve', 'heat-shrink', 'tape', 'conduit'])),
  bore: builders(extent),
  /** Bore after shrinking, for heat-shrink. */
  'shrunk-bore': builders(extent.optional()),
  withstands: builders(quantity('temperature')),
});

export const covering = stockKind('Coverings', coveringSchema);
