import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { id, text } from '../fields.ts';

/** Fields that every part has. */
export const partBase = {
  title: everyone(
    text('Four-channel amplifier, 4 x 75 W'),
    'What the part is called on sheets, in the catalogue and in search.',
  ),
  notes: builders(
    text('Fins on the long sides.').optional(),
    'What whoever mounts or wires it has to know.',
    { example: 'Fins on the long sides.' },
  ),
  formerly: builders(
    z.array(id).optional(),
    'Names that it had in the catalogue before. Who still writes one is told the name of today.',
    { example: ['amp-4'] },
  ),
};
