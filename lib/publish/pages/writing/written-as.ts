import { z } from 'zod';
import { type Audience, audiences, audiencesOf } from '../../../model/audience.ts';
import { dimensions } from '../../../model/quantity/dimensions.ts';
import { shortFormOf } from '../../../model/short-forms/short-form.ts';
import { writtenSide } from '../../../model/writing/field-example.ts';
import { boundWords, type QuantityFacts, quantityFacts } from '../../../model/writing/quantity-facts.ts';
import { innerSchemas, insideOf } from '../../../model/writing/schema-shape.ts';

/** How a field is written, in words: the units of a quantity with its bounds, the words of a choice, a text, a list. */
export function writtenAs(schema: z.ZodType): string {
  return [...new Set(plainWords(schema))].join(', or ');
}

function plainWords(schema: z.ZodType): readonly string[] {
  const facts = quantityFacts(schema);
  if (facts) return [quantityWords(facts)];
  const inside = insideOf(schema);
  switch (inside.shape) {
    case 'wrapper':
      return plainWords(inside.inner);
    case 'union':
      return inside.options.flatMap(plainWords);
    case 'object':
      return ['fields of its own'];
    case 'record':
      return [`by name: ${writtenAs(inside.value)}`];
    case 'list':
      return [`a list: ${writtenAs(inside.element)}`];
    case 'tuple':
      return [`a list of ${inside.items.length}: ${writtenAs(z.union([...inside.items]))}`];
    case 'leaf':
      return leafWords(writtenSide(schema));
  }
}

function leafWords(written: z.ZodType): readonly string[] {
  const facts = quantityFacts(written);
  if (facts) return [quantityWords(facts)];
  if (written instanceof z.ZodEnum || written instanceof z.ZodLiteral)
    return [...(written._zod.values ?? [])].map(String);
  if (written instanceof z.ZodBoolean) return ['true', 'false'];
  if (written instanceof z.ZodISODate) return ['year-month-day'];
  if (written instanceof z.ZodNumber) return [written.isInt ? 'a whole number' : 'a number'];
  const { description } = z.globalRegistry.get(written) ?? {};
  return [description === undefined ? 'a text' : description.replace(/\.$/, '').toLowerCase()];
}

/** `length in in, ft, mm, cm, m; above 0`. */
function quantityWords(facts: QuantityFacts): string {
  const { name, units } = dimensions[facts.dimension];
  const written = Object.keys(units).filter((unit) => /\w/.test(unit));
  return [`${name} in ${written.join(', ')}`, ...boundWords(facts, '0')].join('; ');
}

/** Which short way of writing a field has, in words; empty where it has none. */
export function shortWords(schema: z.ZodType): string {
  const form = shortFormOf(schema);
  const inside = insideOf(schema);
  if (!form) return inside.shape === 'wrapper' ? shortWords(inside.inner) : '';
  switch (form.form) {
    case 'rows':
      return 'In short: one name may stand for several, CH1..4; CH4..1 where the last comes first.';
    case 'range':
      return 'In short: both ends in one text, 8 AWG to 4 AWG.';
    case 'table':
      return 'In short: as a table, { 4 ohm: 75 W, 2 ohm: 100 W }.';
    case 'names':
      return 'In short: a row of names, 1..4.';
    case 'corners':
      return 'In short: holes in the four corners, { inset: 3/8 in, diameter: 3/16 in }.';
    case 'rectangle':
      return 'In short: a rectangle, { width: 20 in, height: 15 in }.';
    default:
      return '';
  }
}

/** Who may see what stands in a field, in words. */
export function seenBy(schema: z.ZodType): string {
  const seen = audiencesIn(schema);
  const list = audiences.filter((audience) => seen.has(audience));
  if (list.length === audiences.length) return 'everyone';
  return list.length === 1 ? `the ${list[0]} alone` : list.join(' and ');
}

function audiencesIn(schema: z.ZodType): ReadonlySet<Audience> {
  const own = audiencesOf(schema);
  if (own.length > 0) return new Set(own);
  return new Set(innerSchemas(schema).flatMap((one) => [...audiencesIn(one)]));
}
