import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { id, text } from '../fields.ts';

/** Fields that every part has. */
export const partBase = {
  title: everyone(text('Four-channel amplifier, 4 x 75 W')),
  notes: builders(text('Fins on the long sides.').optional()),
  /** Names that it had in the catalogue before: who still writes one is told the name of today. */
  formerly: builders(z.array(id).optional()),
};
