import { z } from 'zod';
import { builders } from '../audience.ts';
import { quantityWithin } from '../fields.ts';
import { inSystem, systemVoltages } from '../system-voltage.ts';
import { fittedBase } from './fields/equipment.ts';
import { equipmentKind, kindField, terminalsOf } from './kind.ts';

export const alternatorSchema = z.strictObject({
  kind: kindField('alternator'),
  ...fittedBase,
  rating: builders(
    quantityWithin('current', { above: 0, most: 600 }),
    'What it is rated to give. Hot and idling it gives {alternator-idle-share} of it.',
    { example: '140 A' },
  ),
  'set-point': builders(
    quantityWithin('voltage', {
      least: 10,
      most: Math.max(...systemVoltages.map((system) => inSystem(18, system))),
    }).optional(),
    'The voltage that its regulator holds.',
    { example: '14.4 V', leftOut: 'as measured in the vehicle, else {voltage-sizing}' },
  ),
  'variable-voltage': builders(
    z.boolean().default(false),
    'Whether the vehicle raises and lowers its voltage while driving.',
  ),
});

/** Its case is the negative terminal. */
export const alternator = equipmentKind('Alternators', alternatorSchema, (part) => {
  const [from] = terminalsOf(part.terminals, 'source-negative');
  const [to] = terminalsOf(part.terminals, 'source-positive');
  return from && to ? [{ kind: 'source', source: 'alternator', from, to }] : [];
});
