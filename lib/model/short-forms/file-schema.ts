import { z } from 'zod';
import { onceFor } from '../once-for.ts';
import { insideOf } from '../writing/schema-shape.ts';
import { inPlaceOf } from './schema-edits.ts';
import { shortFormOf } from './short-form.ts';
import { writtenBeside } from './written-forms.ts';

/**
 * What a file may hold of a value: its schema with every short form beside the long one. The reader takes a file by it
 * first, then opens the short forms out and reads the long ones. Texts and audiences of fields are kept. Each is made
 * once, so that what several kinds of part share is shared in their files too.
 */
export const fileSchema = onceFor(written);

function written(schema: z.ZodType): z.ZodType {
  const form = shortFormOf(schema);
  const inside = withFileSchemas(schema);
  return form ? inPlaceOf(schema, writtenBeside(form, inside)) : inside;
}

/** The schema with what is inside of it as a file may hold it; itself where nothing in it has a short form. */
function withFileSchemas(schema: z.ZodType): z.ZodType {
  if (schema instanceof z.ZodObject) {
    const fields = insideOf(schema);
    const shape = fields.shape === 'object' ? [...fields.fields] : [];
    const own = shape.map(([name, field]): [string, z.ZodType] => [name, fileSchema(field)]);
    if (own.every(([, field], at) => field === shape[at]?.[1])) return schema;
    return schema.clone({ ...schema.def, shape: Object.fromEntries(own) }, { parent: true });
  }
  if (schema instanceof z.ZodDiscriminatedUnion || schema instanceof z.ZodUnion) return withOptions(schema);
  const inside = insideOf(schema);
  switch (inside.shape) {
    case 'list':
      return within(schema, inside.element, (element) => ({ element }));
    case 'record':
      return within(schema, inside.value, (valueType) => ({ valueType }));
    case 'wrapper':
      return within(schema, inside.inner, (innerType) => ({ innerType }));
    default:
      return schema;
  }
}

/** A copy of a schema with something else inside of it; the schema itself where that is the same. */
function within(schema: z.ZodType, inner: z.ZodType, put: (inner: z.ZodType) => object): z.ZodType {
  const own = fileSchema(inner);
  return own === inner ? schema : schema.clone({ ...schema.def, ...put(own) }, { parent: true });
}

function withOptions(schema: z.ZodUnion | z.ZodDiscriminatedUnion): z.ZodType {
  const inside = insideOf(schema);
  const options = inside.shape === 'union' ? inside.options : [];
  const own = options.map(fileSchema);
  if (own.every((option, at) => option === options[at])) return schema;
  return schema.clone({ ...schema.def, options: own }, { parent: true });
}
