import { z } from 'zod';
import { builders } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { extent, quantityWithin } from '../fields.ts';
import { kindField, stockKind } from './kind.ts';

export const grommetSchema = z
  .strictObject({
    kind: kindField('grommet'),
    ...partBase,
    hole: builders(extent, 'The hole in the panel that it sits in.', { example: '20 mm' }),
    bore: builders(extent, 'What is free in it for wires.', { example: '14 mm' }),
    panel: builders(
      quantityWithin('length', { above: 0, most: 0.015 }).optional(),
      'The thickest panel that its groove takes.',
      { example: '2 mm' },
    ),
  })
  .refine(({ bore, hole }) => bore < hole, {
    error: 'is not below the hole that the grommet sits in',
    path: ['bore'],
  });

export const grommet = stockKind('Grommets', grommetSchema);
