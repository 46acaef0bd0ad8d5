import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantity, quantityAbove } from '../fields.ts';
import { equipmentBase, equipmentKind, terminalsOf } from './kind.ts';

export const alternatorSchema = z.strictObject({
  kind: everyone(z.literal('alternator')),
  ...equipmentBase,
  rating: builders(quantityAbove('current')),
  'set-point': builders(quantity('voltage').optional()),
  'variable-voltage': builders(z.boolean().default(false)),
});

/** Its case is the negative terminal. */
export const alternator = equipmentKind('Alternators', alternatorSchema, (part) => {
  const [from] = terminalsOf(part.terminals, 'source-negative');
  const [to] = terminalsOf(part.terminals, 'source-positive');
  return from && to ? [{ kind: 'source', source: 'alternator', from, to }] : [];
});
