import { z } from 'zod';
import { builders } from '../audience.ts';
import { quantityAbove, quantityWithin } from '../fields.ts';
import { equipmentBase } from './fields/equipment.ts';
import { equipmentKind, kindField, terminalsOf } from './kind.ts';

/** Capacitors in one case: they give a short very much current, and hold no reserve. */
export const capacitorBankSchema = z.strictObject({
  kind: kindField('capacitor-bank'),
  ...equipmentBase,
  capacitance: builders(quantityWithin('capacitance', { least: 1, most: 20_000 }), 'What it holds.', {
    example: '500 F',
  }),
  resistance: builders(
    quantityWithin('resistance', { above: 0, most: 1 }),
    'Its series resistance, by its maker. It decides what the bank drives into a short.',
    { example: '1 mohm' },
  ),
  'rated-voltage': builders(quantityAbove('voltage'), 'The most that it may be charged to, by its maker.', {
    example: '16 V',
  }),
  fuse: builders(quantityAbove('current'), "The maker's fuse for it: a ceiling.", { example: '200 A' }),
});

export const capacitorBank = equipmentKind('Capacitor banks', capacitorBankSchema, (part) => {
  const [from] = terminalsOf(part.terminals, 'source-negative');
  const [to] = terminalsOf(part.terminals, 'source-positive');
  return from && to ? [{ kind: 'source', source: 'capacitor-bank', from, to }] : [];
});
