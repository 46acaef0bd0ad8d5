import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantityWithin } from '../fields.ts';
import { fuseFormSchema } from '../vocabulary.ts';
import { equipmentBase, equipmentKind, terminalsOf } from './kind.ts';

export const fuseHolderSchema = z.strictObject({
  kind: everyone(z.literal('fuse-holder')),
  ...equipmentBase,
  'fuse-form': builders(fuseFormSchema),
  /** Greatest fuse that the holder may carry. */
  current: builders(quantityWithin('current', { above: 0, most: 1000 })),
});

export const fuseHolder = equipmentKind('Fuse holders', fuseHolderSchema, (part) => {
  const [from] = terminalsOf(part.terminals, 'feed-in');
  const [to] = terminalsOf(part.terminals, 'feed-out');
  return from && to ? [{ kind: 'fuse', way: '', from, to }] : [];
});
