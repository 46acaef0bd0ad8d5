import { z } from 'zod';
import { builders } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import { text, wireSize } from '../fields.ts';
import { span } from '../short-forms/short-form.ts';
import { studSchema } from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';
import { stripLength, tabWidth } from './fields/bounds.ts';
import { kindField, stockKind } from './kind.ts';

/** What goes on the end of a conductor. */
export const terminalSchema = z.strictObject({
  kind: kindField('terminal'),
  ...partBase,
  form: builders(
    z.enum([
      'ferrule',
      'twin-ferrule',
      'ring-lug',
      'blade-receptacle',
      'butt-splice',
      'solder-sleeve',
      'reducer',
      'post-clamp',
    ]),
    'What it is.',
    { example: 'ring-lug' },
  ),
  takes: section(
    span(
      z.strictObject({
        from: builders(wireSize, 'The thinnest conductor.', { example: '4 AWG' }),
        to: builders(wireSize, 'The thickest conductor.', { example: '4 AWG' }),
      }),
    ),
    'The conductors that it is made for.',
    { example: { from: '4 AWG', to: '4 AWG' } },
  ),
  'other-side': section(
    span(
      z.strictObject({
        from: builders(wireSize, 'The thinnest conductor.', { example: '22 AWG' }),
        to: builders(wireSize, 'The thickest conductor.', { example: '18 AWG' }),
      }),
    ).optional(),
    'Of a butt splice that steps down: the conductors of its thinner barrel; `takes` tells those of the thicker one.',
  ),
  stud: builders(studSchema.optional(), 'The stud that its hole fits.', { example: 'M8' }),
  tab: builders(tabWidth.optional(), 'Of a blade receptacle: how wide the tab is that it goes on.', {
    example: '6.3 mm',
    leftOut: 'it is taken for no tab whose width is told',
  }),
  pin: builders(wireSize.optional(), 'Of a reducer: the conductor size that its pin stands for in a port.', {
    example: '4 AWG',
  }),
  strip: builders(stripLength.optional(), 'How much insulation is stripped for it.', { example: '1/2 in' }),
  die: builders(text('6 AWG hex').optional(), 'The die that it is crimped with.'),
});

export const terminal = stockKind('Terminals for conductors', terminalSchema);
