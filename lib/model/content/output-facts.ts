import { z } from 'zod';
import { builders } from '../audience.ts';
import { quantity, text } from '../fields.ts';
import { powers } from '../kinds/fields/powers.ts';
import { rows, span } from '../short-forms/short-form.ts';
import {
  carriedSchema,
  factoryEqualisingSchema,
  outputFormSchema,
  polaritySchema,
  vehicleSideSchema,
} from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';

/** What one output of a source gives, as measured or as its maker publishes it; what is left out is not known. */
export const outputFactsSchema = z.strictObject({
  form: builders(outputFormSchema.optional(), 'How the output carries its sound.', {
    example: 'analogue',
    leftOut: 'not known',
  }),
  side: builders(vehicleSideSchema.optional(), 'The side of the vehicle that it plays for.', {
    example: 'left',
    picture: 'vehicle',
    leftOut: 'not known',
  }),
  carries: builders(carriedSchema.optional(), 'What it carries.', {
    example: 'front-left',
    leftOut: 'by its number: front, rear, bass, the left one first',
  }),
  bandwidth: section(
    span(
      z.strictObject({
        from: builders(quantity('frequency'), 'Its lowest frequency.', { example: '20 Hz' }),
        to: builders(quantity('frequency'), 'Its highest frequency.', { example: '20 kHz' }),
      }),
    ).optional(),
    'The band that it carries.',
    { leftOut: 'not known' },
  ),
  polarity: builders(polaritySchema.optional(), 'Which way round it is.', {
    example: 'normal',
    leftOut: 'not known',
  }),
  'clean-voltage': builders(quantity('voltage').optional(), 'Its greatest clean voltage, RMS.', {
    example: '3.8 V',
    leftOut: 'as its terminal says, else by its powers: the root of power times load',
  }),
  'clean-at': builders(
    text('volume 26 of 30').optional(),
    'How far up the source stood for that voltage, as its display says it: it stands there while gains are set.',
    { example: 'volume 26 of 30', leftOut: 'the step of the gains names no level of the source' },
  ),
  powers: section(
    powers.optional(),
    'Of a speaker output: its rated power into each load, as a leaflet states it.',
    { example: [{ load: '4 ohm', power: '18 W' }], leftOut: 'not known' },
  ),
  offset: builders(
    quantity('voltage').optional(),
    'Direct voltage of each side to ground: half the supply on a bridged output.',
    { example: '0 V', leftOut: 'not known' },
  ),
  equalising: builders(factoryEqualisingSchema.optional(), 'What the radio does to its tone.', {
    example: 'none',
    leftOut: 'not known',
  }),
  'load-sensing': builders(
    z.boolean().optional(),
    'Whether the source switches it off where it feels no speaker on it.',
    { example: false, leftOut: 'not known' },
  ),
  'noise-cancelling': builders(z.boolean().optional(), 'Whether active noise cancelling plays through it.', {
    example: false,
    leftOut: 'not known',
  }),
  chimes: builders(z.boolean().optional(), 'Whether warnings and chimes of the vehicle sound through it.', {
    example: false,
    leftOut: 'not known',
  }),
});
export type OutputFacts = z.output<typeof outputFactsSchema>;

/** The outputs of a source by terminal or pair. */
export const outputsSchema = rows(z.record(z.string(), outputFactsSchema), {
  side: 'list',
  carries: 'list',
  'clean-voltage': 'list',
  chimes: 'list',
});

/** What is known of an output: what was found in the vehicle goes before what the part says. */
export function mergeOutputFacts(part: OutputFacts | undefined, found: OutputFacts | undefined): OutputFacts {
  const merged: OutputFacts = { ...part };
  return found ? { ...merged, ...withoutGaps(found) } : merged;
}

function withoutGaps(facts: OutputFacts): OutputFacts {
  const kept: OutputFacts = {};
  return Object.assign(
    kept,
    Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined)),
  );
}
