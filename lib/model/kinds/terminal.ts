import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { isRisingSize, runsDownwards, text, wireSize } from '../fields.ts';
import { span } from '../short-forms/short-form.ts';
import { studSchema } from '../vocabulary.ts';
import { stripLength } from './bounds.ts';
import { stockKind } from './kind.ts';

/** What goes on the end of a conductor. */
export const terminalSchema = z.strictObject({
  kind: everyone(z.literal('terminal')),
  ...partBase,
  form: builders(
    z.enum([
      'ferrule',
      'twin-ferrule',
      'ring-lug',
      'blade-receptacle',
      'butt-splice',
      'reducer',
      'post-clamp',
    ]),
  ),
  takes: span(
    z.strictObject({ from: builders(wireSize), to: builders(wireSize) }).refine(isRisingSize, runsDownwards),
  ),
  stud: builders(studSchema.optional()),
  /** Of a reducer: the conductor size that its pin stands for in a port. */
  pin: builders(wireSize.optional()),
  strip: builders(stripLength.optional()),
  die: builders(text('6 AWG hex').optional()),
});

export const terminal = stockKind('Terminals for conductors', terminalSchema);
