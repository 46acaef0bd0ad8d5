import { z } from 'zod';
import { builders } from '../audience.ts';
import { quantityAbove, quantityWithin } from '../fields.ts';
import { section } from '../writing/field-text.ts';
import { equipmentBase } from './fields/equipment.ts';
import { supplyRangeSchema } from './fields/supply.ts';
import { equipmentKind, kindField, supplyElement, terminalsOf } from './kind.ts';

/**
 * A charger from one battery to another, from 12 V to 12 V or from 24 V to 12 V. It works while the engine runs, gives
 * nothing while it does not, and lets no current back.
 */
export const chargerSchema = z.strictObject({
  kind: kindField('charger'),
  ...equipmentBase,
  'starts-by': builders(
    z.enum(['turn-on', 'charging-voltage']).optional(),
    'What starts it: its turn-on terminal, or the charging voltage that it sees itself at its input.',
    { example: 'charging-voltage', leftOut: 'its turn-on terminal, where it has one' },
  ),
  input: section(
    z.strictObject({
      range: section(supplyRangeSchema.optional(), 'The voltages that its input is made for.', {
        leftOut: 'it counts as made for a 12 V system',
      }),
      fuse: builders(quantityAbove('current'), "The maker's fuse for its input: a ceiling.", {
        example: '50 A',
      }),
      efficiency: builders(
        quantityWithin('ratio', { least: 0.4, most: 1 }),
        'Output power over input power.',
        { example: '90 %' },
      ),
      'key-off': builders(
        quantityAbove('current').optional(),
        'What it draws with everything switched off.',
        { example: '2 mA' },
      ),
      'turn-on-draw': builders(quantityAbove('current').optional(), 'What its turn-on terminal draws.', {
        example: '20 mA',
        leftOut: '{turn-on-draw}',
      }),
    }),
    'The side that is fed by the starter battery.',
  ),
  output: section(
    z.strictObject({
      voltage: builders(quantityAbove('voltage'), 'What it regulates to.', { example: '14.4 V' }),
      current: builders(quantityAbove('current'), 'The most that it gives.', { example: '30 A' }),
      fuse: builders(quantityAbove('current'), "The maker's fuse for its output: a ceiling.", {
        example: '40 A',
      }),
    }),
    'The side that feeds the second battery.',
  ),
});

/** A load between its input terminals, a source that limits itself behind its output. */
export const charger = equipmentKind('Chargers', chargerSchema, (part) => {
  const [to] = terminalsOf(part.terminals, 'source-positive');
  const [from] = terminalsOf(part.terminals, 'supply-negative');
  const input = supplyElement(part.terminals, 'regulated');
  return from && to ? [...input, { kind: 'source', source: 'charger', from, to }] : input;
});
