import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantityAbove, quantityWithin } from '../fields.ts';
import { equipmentBase, equipmentKind, supplyElement, supplyRangeSchema, terminalsOf } from './kind.ts';

/**
 * A charger from one battery to another, from 12 V to 12 V or from 24 V to 12 V. It works while the engine runs, gives
 * nothing while it does not, and lets no current back.
 */
export const chargerSchema = z.strictObject({
  kind: everyone(z.literal('charger')),
  ...equipmentBase,
  input: z.strictObject({
    /** Where its maker is silent it counts as made for a 12 V system. */
    range: supplyRangeSchema.optional(),
    /** The maker's fuse for its input: a ceiling. */
    fuse: builders(quantityAbove('current')),
    /** Output power over input power. */
    efficiency: builders(quantityWithin('ratio', { least: 0.4, most: 1 })),
    'key-off': builders(quantityAbove('current').optional()),
    'turn-on-draw': builders(quantityAbove('current').optional()),
  }),
  output: z.strictObject({
    /** What it regulates to, and the most that it gives. */
    voltage: builders(quantityAbove('voltage')),
    current: builders(quantityAbove('current')),
    /** The maker's fuse for its output: a ceiling. */
    fuse: builders(quantityAbove('current')),
  }),
});

/** A load between its input terminals, a source that limits itself behind its output. */
export const charger = equipmentKind('Chargers', chargerSchema, (part) => {
  const [to] = terminalsOf(part.terminals, 'source-positive');
  const [from] = terminalsOf(part.terminals, 'supply-negative');
  const input = supplyElement(part.terminals, 'regulated');
  return from && to ? [...input, { kind: 'source', source: 'charger', from, to }] : input;
});
