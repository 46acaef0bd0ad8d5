import { z } from 'zod';
import { builders } from '../audience.ts';
import { isRising, quantity, runsDownwards } from '../fields.ts';
import { rows, span } from '../short-forms/short-form.ts';
import {
  carriedSchema,
  factoryEqualisingSchema,
  outputFormSchema,
  polaritySchema,
  vehicleSideSchema,
} from '../vocabulary.ts';

/** What one output of a source gives, as measured or as its maker publishes it; what is left out is not known. */
export const outputFactsSchema = z.strictObject({
  form: builders(outputFormSchema.optional()),
  /** The side of the vehicle that it plays for. */
  side: builders(vehicleSideSchema.optional()),
  /** What it carries; left out, by its number: front, rear, bass, the left one first. */
  carries: builders(carriedSchema.optional()),
  bandwidth: span(
    z
      .strictObject({ from: builders(quantity('frequency')), to: builders(quantity('frequency')) })
      .refine(isRising, runsDownwards),
  ).optional(),
  polarity: builders(polaritySchema.optional()),
  /** Greatest clean voltage, RMS. */
  'clean-voltage': builders(quantity('voltage').optional()),
  /** Direct-current offset of each side to ground: half the supply on a bridged output. */
  offset: builders(quantity('voltage').optional()),
  equalising: builders(factoryEqualisingSchema.optional()),
  /** Whether the source switches the output off where it feels no speaker on it. */
  'load-sensing': builders(z.boolean().optional()),
  /** Whether active noise cancelling plays through it. */
  'noise-cancelling': builders(z.boolean().optional()),
  /** Whether warnings and chimes of the vehicle sound through it. */
  chimes: builders(z.boolean().optional()),
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
