import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantityAbove, quantityWithin } from '../fields.ts';
import { equipmentBase, equipmentKind, terminalsOf } from './kind.ts';

/** Capacitors in one case: they give a short very much current, and hold no reserve. */
export const capacitorBankSchema = z.strictObject({
  kind: everyone(z.literal('capacitor-bank')),
  ...equipmentBase,
  capacitance: builders(quantityWithin('capacitance', { least: 1, most: 20_000 })),
  /** Series resistance by its maker: it decides what the bank drives into a short. */
  resistance: builders(quantityWithin('resistance', { above: 0, most: 1 })),
  /** The most that it may be charged to, by its maker. */
  'rated-voltage': builders(quantityAbove('voltage')),
  /** The maker's fuse for it: a ceiling. */
  fuse: builders(quantityAbove('current')),
});

export const capacitorBank = equipmentKind('Capacitor banks', capacitorBankSchema, (part) => {
  const [from] = terminalsOf(part.terminals, 'source-negative');
  const [to] = terminalsOf(part.terminals, 'source-positive');
  return from && to ? [{ kind: 'source', source: 'capacitor-bank', from, to }] : [];
});
