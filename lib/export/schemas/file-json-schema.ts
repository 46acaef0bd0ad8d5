import { z } from 'zod';
import { dimensionNames } from '../../model/quantity/dimensions.ts';
import { type FormSign, wireSizeForm, writtenForm } from '../../model/quantity/written-form.ts';
import { fileSchema } from '../../model/short-forms/file-schema.ts';
import { fieldText } from '../../model/writing/field-text.ts';
import { ifThen } from '../../model/writing/if-then.ts';
import { boundWords, quantityFacts } from '../../model/writing/quantity-facts.ts';
import { insideOf } from '../../model/writing/schema-shape.ts';
import { onceEach } from '../../plan/once-each.ts';
import type { JsonSchema } from './json-schema.ts';

type Written = z.core.JSONSchema.BaseSchema;

/**
 * The JSON Schema of a kind of file, from the schema that its reader goes by: what may be written, short forms too, before
 * anything is read into other forms. Fields have what the writing guide says of them, `tell` puts the figures of house rules into it.
 * Bounds of quantities are told in words, since a pattern can't compare: which of them a text keeps, the reader knows.
 */
export function fileJsonSchema(schema: z.ZodType, tell: (says: string) => string): JsonSchema {
  return toldSchema(untoldSchema(schema), tell);
}

/** The same with the names of house rules in its texts: it follows from the code alone, and takes longer than all else of it. */
const untoldSchema = onceEach(writtenSchema, (schema) => schema);

function writtenSchema(schema: z.ZodType): JsonSchema {
  const forms = new Map<string, JsonSchema>();
  const { $schema, ...file } = z.toJSONSchema(fileSchema(schema), {
    io: 'input',
    override: ({ zodSchema, jsonSchema }) => {
      if (!(zodSchema instanceof z.ZodType)) return;
      nameForm(jsonSchema, forms);
      if (zodSchema instanceof z.ZodDiscriminatedUnion)
        takeKind(jsonSchema, zodSchema.def.discriminator, zodSchema.def.options);
      describe(zodSchema, jsonSchema);
    },
  });
  const named = [...forms].sort(([a], [b]) => (a < b ? -1 : 1));
  return { $schema, ...file, ...(named.length > 0 && { $defs: Object.fromEntries(named) }) };
}

function toldSchema(schema: object, tell: (says: string) => string): JsonSchema {
  const told = (key: string, value: unknown): unknown => {
    if (key === 'description' && typeof value === 'string') return tell(value);
    return key === 'examples' ? value : toldInside(value, tell);
  };
  return Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, told(key, value)]));
}

function toldInside(value: unknown, tell: (says: string) => string): unknown {
  if (Array.isArray(value)) return value.map((one) => toldInside(one, tell));
  return typeof value === 'object' && value !== null ? toldSchema(value, tell) : value;
}

/** Names of the forms that many fields share, by their pattern. */
const formNames: ReadonlyMap<string, string> = new Map([
  ...(['unsigned', 'signed'] satisfies FormSign[]).flatMap((sign) =>
    dimensionNames.map((name): [string, string] => [
      writtenForm(name, sign),
      sign === 'signed' ? name : `${name}-from-zero`,
    ]),
  ),
  [wireSizeForm(), 'conductor-size'],
]);

/** Puts a shared form in a place of its own, and a reference to it where it was. */
function nameForm(written: Written, forms: Map<string, JsonSchema>): void {
  const name = typeof written.pattern === 'string' ? formNames.get(written.pattern) : undefined;
  if (name === undefined) return;
  forms.set(name, { ...written });
  replace(written, { $ref: `#/$defs/${name}` });
}

function replace(written: Written, by: Written): void {
  for (const key of Object.keys(written)) delete written[key];
  Object.assign(written, by);
}

/**
 * A union whose options differ by a word: an editor that knows the word checks that option alone, and tells what is
 * wrong with it, where of a plain union it could only tell that nothing fits.
 */
function takeKind(written: Written, key: string, options: readonly z.core.$ZodType[]): void {
  const { oneOf: schemas = [], ...more } = written;
  const words = options.map((option) => [...(option._zod.propValues?.[key] ?? [])]);
  replace(written, {
    ...more,
    type: 'object',
    required: [key],
    properties: { [key]: { enum: words.flat().map(String) } },
    allOf: schemas.map((option, index) =>
      ifThen({ required: [key], properties: { [key]: { enum: (words[index] ?? []).map(String) } } }, option),
    ),
  });
}

/** What the guide says of a field, the bounds of its amount, and what holds where it is left out. */
function describe(schema: z.ZodType, written: Written): void {
  const said = fieldText(schema);
  const bounds = boundsText(schema);
  if (said) {
    const leftOut = said.leftOut === undefined ? [] : [`Left out: ${said.leftOut}`];
    written.description = [said.says, ...bounds, ...leftOut].join(' ');
    if (said.example !== undefined) written.examples = [said.example];
  } else if (bounds.length > 0) written.description = bounds.join(' ');
}

function boundsText(schema: z.ZodType): readonly string[] {
  const facts = quantityFacts(schema);
  if (!facts) {
    const inside = insideOf(schema);
    return inside.shape === 'wrapper' ? boundsText(inside.inner) : [];
  }
  const words = boundWords(facts, 'zero').join(', ');
  return words === '' ? [] : [`${words.charAt(0).toUpperCase()}${words.slice(1)}.`];
}
