import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { quantity } from '../fields.ts';
import { partBase, stockKind } from './kind.ts';

export const boardSheetSchema = z.strictObject({
  kind: everyone(z.literal('board-sheet')),
  ...partBase,
  /** Search filters by it. */
  material: everyone(z.enum(['birch-plywood', 'fibreboard', 'polyethylene', 'aluminium', 'acrylic'])),
  thickness: builders(quantity('length')),
  width: builders(quantity('length')),
  height: builders(quantity('length')),
  density: builders(quantity('density')),
  modulus: builders(quantity('stress')),
  /** Along which side of the sheet the grain of its face runs. Left out: it has none, and pieces lie either way. */
  grain: builders(z.enum(['width', 'height']).optional()),
  sealed: builders(z.boolean().default(false)),
});

export const boardSheet = stockKind('Board sheets', boardSheetSchema);
