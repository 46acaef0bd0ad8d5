import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantity } from '../fields.ts';
import { partBase, stockKind } from './kind.ts';

export const grommetSchema = z.strictObject({
  kind: everyone(z.literal('grommet')),
  ...partBase,
  hole: builders(quantity('length')),
  bore: builders(quantity('length')),
  panel: builders(quantity('length').optional()),
});

export const grommet = stockKind('Grommets', grommetSchema);
