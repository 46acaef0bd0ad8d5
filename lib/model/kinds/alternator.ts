import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantityWithin } from '../fields.ts';
import { inSystem, systemVoltages } from '../system-voltage.ts';
import { equipmentBase, equipmentKind, terminalsOf } from './kind.ts';

export const alternatorSchema = z.strictObject({
  kind: everyone(z.literal('alternator')),
  ...equipmentBase,
  rating: builders(quantityWithin('current', { above: 0, most: 600 })),
  /** Left out, the house rules' voltages hold. */
  'set-point': builders(
    quantityWithin('voltage', {
      least: 10,
      most: Math.max(...systemVoltages.map((system) => inSystem(18, system))),
    }).optional(),
  ),
  'variable-voltage': builders(z.boolean().default(false)),
});

/** Its case is the negative terminal. */
export const alternator = equipmentKind('Alternators', alternatorSchema, (part) => {
  const [from] = terminalsOf(part.terminals, 'source-negative');
  const [to] = terminalsOf(part.terminals, 'source-positive');
  return from && to ? [{ kind: 'source', source: 'alternator', from, to }] : [];
});
