import { z } from 'zod';
import { type Audience, audiencesOf, shownTo } from '../audience.ts';
import { writtenSide } from '../writing/field-example.ts';
import { fieldText, section } from '../writing/field-text.ts';
import { insideOf, withoutWrappers } from '../writing/schema-shape.ts';

/** The fields of an object behind optional and the like; none where it is no object. */
export function fieldsOf(schema: z.ZodType): ReadonlyMap<string, z.ZodType> {
  const inside = insideOf(withoutWrappers(schema));
  return inside.shape === 'object' ? inside.fields : new Map();
}

/** The examples that a field carries, as they are written. */
export function examplesOf(schema: z.ZodType): readonly string[] {
  const examples = z.globalRegistry.get(writtenSide(withoutWrappers(schema)))?.examples;
  return Array.isArray(examples) ? examples.map(String) : [];
}

/** The words of a field that takes one of a set. */
export function wordsOf(schema: z.ZodType): readonly string[] {
  const bare = withoutWrappers(schema);
  return bare instanceof z.ZodEnum ? bare.options.map(String) : [];
}

/** A field in the place of another: with its audience, and with what was said of it. */
export function inPlaceOf(field: z.ZodType, own: z.ZodType, leftOut?: string): z.ZodType {
  const audiences = audiencesBelow(field);
  const declared = audiences.length > 0 ? shownTo(...audiences)(own) : own;
  const told = fieldText(field);
  if (!told) return declared;
  const { says, ...more } = told;
  return section(declared, says, leftOut === undefined ? more : { ...more, leftOut });
}

/** The audiences of a field, be they declared of itself or behind optional and the like. */
function audiencesBelow(field: z.ZodType): readonly Audience[] {
  const own = audiencesOf(field);
  const inside = insideOf(field);
  return own.length > 0 || inside.shape !== 'wrapper' ? own : audiencesBelow(inside.inner);
}

/** An object with one field more, or another in the place of one that it has, in its place. */
export function withField(schema: z.ZodType, name: string, field: z.ZodType): z.ZodType {
  if (!(schema instanceof z.ZodObject)) return schema;
  const shape = { ...schema.def.shape, [name]: field };
  return schema.clone({ ...schema.def, shape }, { parent: true });
}

/** An object some fields of which may be left out, each with what holds then. */
export function mayLack(schema: z.ZodType, leftOut: Readonly<Record<string, string>>): z.ZodType {
  return Object.entries(leftOut).reduce((entry, [name, holds]) => {
    const field = fieldsOf(entry).get(name);
    return field ? withField(entry, name, inPlaceOf(field, field.optional(), holds)) : entry;
  }, schema);
}
