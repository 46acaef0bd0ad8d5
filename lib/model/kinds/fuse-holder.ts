import { z } from 'zod';
import { builders } from '../audience.ts';
import { quantityWithin } from '../fields.ts';
import { equipmentBase } from './fields/equipment.ts';
import { fuseFormField } from './fields/fuse-form.ts';
import { equipmentKind, kindField, terminalsOf } from './kind.ts';

export const fuseHolderSchema = z.strictObject({
  kind: kindField('fuse-holder'),
  ...equipmentBase,
  'fuse-form': builders(fuseFormField, 'The form of fuse that fits it.', { example: 'small-bolt-in' }),
  current: builders(
    quantityWithin('current', { above: 0, most: 1000 }),
    'The greatest fuse that it may carry.',
    { example: '150 A' },
  ),
});

export const fuseHolder = equipmentKind('Fuse holders', fuseHolderSchema, (part) => {
  const [from] = terminalsOf(part.terminals, 'feed-in');
  const [to] = terminalsOf(part.terminals, 'feed-out');
  return from && to ? [{ kind: 'fuse', way: '', from, to }] : [];
});
