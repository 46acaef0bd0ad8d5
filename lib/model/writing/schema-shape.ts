import { z } from 'zod';

/** One field, element or alternative inside a schema. */
export type Inner =
  | { readonly shape: 'object'; readonly fields: ReadonlyMap<string, z.ZodType> }
  | { readonly shape: 'list'; readonly element: z.ZodType }
  | { readonly shape: 'tuple'; readonly items: readonly z.ZodType[] }
  | { readonly shape: 'record'; readonly key: z.ZodType; readonly value: z.ZodType }
  | { readonly shape: 'union'; readonly options: readonly z.ZodType[] }
  | { readonly shape: 'wrapper'; readonly inner: z.ZodType }
  | { readonly shape: 'leaf' };

function isSchema(value: unknown): value is z.ZodType {
  return value instanceof z.ZodType;
}

/** What a schema is made of, for walking it beside a value that it has read. */
export function insideOf(schema: z.ZodType): Inner {
  if (schema instanceof z.ZodObject)
    return {
      shape: 'object',
      fields: new Map(
        Object.entries(schema.shape).flatMap(([name, field]) => (isSchema(field) ? [[name, field]] : [])),
      ),
    };
  if (schema instanceof z.ZodArray && isSchema(schema.element))
    return { shape: 'list', element: schema.element };
  if (schema instanceof z.ZodTuple) return { shape: 'tuple', items: schema.def.items.filter(isSchema) };
  if (schema instanceof z.ZodRecord && isSchema(schema.keyType) && isSchema(schema.valueType))
    return { shape: 'record', key: schema.keyType, value: schema.valueType };
  if (schema instanceof z.ZodUnion) return { shape: 'union', options: schema.options.filter(isSchema) };
  return wrapperInside(schema);
}

/** The schema behind optional and the like. */
export function withoutWrappers(schema: z.ZodType): z.ZodType {
  const inside = wrapperInside(schema);
  return inside.shape === 'wrapper' ? withoutWrappers(inside.inner) : schema;
}

/** The schemas right inside a schema, whatever holds them; none in a leaf. */
export function innerSchemas(schema: z.ZodType): readonly z.ZodType[] {
  const inside = insideOf(schema);
  switch (inside.shape) {
    case 'object':
      return [...inside.fields.values()];
    case 'list':
      return [inside.element];
    case 'record':
      return [inside.value];
    case 'tuple':
      return inside.items;
    case 'union':
      return inside.options;
    case 'wrapper':
      return [inside.inner];
    case 'leaf':
      return [];
  }
}

function wrapperInside(schema: z.ZodType): Inner {
  const wraps =
    schema instanceof z.ZodOptional ||
    schema instanceof z.ZodNullable ||
    schema instanceof z.ZodDefault ||
    schema instanceof z.ZodPrefault ||
    schema instanceof z.ZodReadonly ||
    schema instanceof z.ZodNonOptional;
  if (!wraps) return { shape: 'leaf' };
  const inner: unknown = schema.def.innerType;
  return isSchema(inner) ? { shape: 'wrapper', inner } : { shape: 'leaf' };
}
