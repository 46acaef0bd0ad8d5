import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { extent } from '../fields.ts';
import { partBase, stockKind } from './kind.ts';

export const grommetSchema = z.strictObject({
  kind: everyone(z.literal('grommet')),
  ...partBase,
  hole: builders(extent),
  bore: builders(extent),
  panel: builders(extent.optional()),
});

export const grommet = stockKind('Grommets', grommetSchema);
