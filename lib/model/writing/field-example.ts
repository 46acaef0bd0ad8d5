import { z } from 'zod';
import { fieldText, type Written } from './field-text.ts';
import { insideOf } from './schema-shape.ts';

/** True where a file may leave the field out. */
export function mayBeLeftOut(schema: z.core.$ZodType): boolean {
  return schema._zod.optin !== undefined;
}

/** What holds by its schema where a field is left out; undefined where the schema gives no default. */
export function schemaDefault(schema: z.ZodType): unknown {
  if (schema instanceof z.ZodDefault) return schema.def.defaultValue;
  const inside = insideOf(schema);
  return inside.shape === 'wrapper' ? schemaDefault(inside.inner) : undefined;
}

/**
 * How a field may be written, as plain data: its own example; else that of its schema, the first of a set of words, or
 * what the fields in it give that can't be left out. Undefined where nothing tells one.
 */
export function fieldExample(schema: z.ZodType): Written | undefined {
  const own = fieldText(schema)?.example;
  if (own !== undefined) return own;
  const inside = insideOf(schema);
  switch (inside.shape) {
    case 'object':
      return objectExample(inside.fields);
    case 'record':
      return { [nameExample(schema)]: fieldExample(inside.value) ?? null };
    case 'list':
      return [fieldExample(inside.element) ?? null];
    case 'tuple':
      return inside.items.map((item) => fieldExample(item) ?? null);
    case 'union':
      return inside.options.map(fieldExample).find((one) => one !== undefined);
    case 'wrapper':
      return wrappedExample(schema, inside.inner);
    case 'leaf':
      return leafExample(schema);
  }
}

/** What is behind optional and the like, with the name that was said of the field itself. */
function wrappedExample(schema: z.ZodType, inner: z.ZodType): Written | undefined {
  const name = fieldText(schema)?.name;
  const behind = insideOf(inner);
  if (behind.shape === 'record' && name !== undefined) return { [name]: fieldExample(behind.value) ?? null };
  return fieldExample(inner);
}

/** The fields that can't be left out; where each can, the first. */
function objectExample(fields: ReadonlyMap<string, z.ZodType>): Written {
  const all = [...fields];
  const needed = all.filter(([, field]) => !mayBeLeftOut(field));
  const shown = needed.length > 0 ? needed : all.slice(0, 1);
  return Object.fromEntries(shown.map(([name, field]) => [name, fieldExample(field) ?? null]));
}

function nameExample(record: z.ZodType): string {
  const said = fieldText(record)?.name;
  if (said !== undefined) return said;
  const known = record instanceof z.ZodRecord ? leafExample(asType(record.def.keyType)) : undefined;
  return typeof known === 'string' ? known : 'name';
}

function leafExample(schema: z.ZodType): Written | undefined {
  const written = writtenSide(schema);
  const examples: unknown = z.globalRegistry.get(written)?.examples;
  const [first]: readonly unknown[] = Array.isArray(examples) ? examples : [];
  if (isWritten(first)) return first;
  const [word]: readonly unknown[] =
    written instanceof z.ZodEnum || written instanceof z.ZodLiteral ? [...(written._zod.values ?? [])] : [];
  if (isWritten(word)) return word;
  return written instanceof z.ZodBoolean ? true : undefined;
}

const plainData = z.json();

function isWritten(value: unknown): value is Written {
  return value !== undefined && plainData.safeParse(value).success;
}

/** What a file holds of a value that is read into another form. */
export function writtenSide(schema: z.ZodType): z.ZodType {
  return schema instanceof z.ZodPipe ? writtenSide(asType(schema.def.in)) : schema;
}

function asType(schema: z.core.$ZodType): z.ZodType {
  if (schema instanceof z.ZodType) return schema;
  throw new Error('A schema is made by another library.');
}
