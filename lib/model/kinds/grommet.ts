import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { extent, quantityWithin } from '../fields.ts';
import { stockKind } from './kind.ts';

export const grommetSchema = z
  .strictObject({
    kind: everyone(z.literal('grommet')),
    ...partBase,
    hole: builders(extent),
    bore: builders(extent),
    panel: builders(quantityWithin('length', { above: 0, most: 0.015 }).optional()),
  })
  .refine(({ bore, hole }) => bore < hole, {
    error: 'is not below the hole that the grommet sits in',
    path: ['bore'],
  });

export const grommet = stockKind('Grommets', grommetSchema);
