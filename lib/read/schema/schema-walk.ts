import { z } from 'zod';

type Schema = z.core.$ZodType;
export type Keys = readonly (string | number)[];

/**
 * The schemas that a written value may have to fit, behind optional, default, codec and the like: the one
 * itself, or each option of a union. The written side of a codec counts.
 */
export function plainSchemas(schema: Schema): readonly Schema[] {
  if (schema instanceof z.core.$ZodUnion) return schema._zod.def.options.flatMap(plainSchemas);
  if (schema instanceof z.core.$ZodIntersection)
    return [schema._zod.def.left, schema._zod.def.right].flatMap(plainSchemas);
  const inner = unwrapped(schema);
  return inner ? plainSchemas(inner) : [schema];
}

/** The schema behind one layer of optional, default, codec and the like; null where there is none. */
export function unwrapped(schema: Schema): Schema | null {
  if (schema instanceof z.core.$ZodLazy) return schema._zod.innerType;
  if (schema instanceof z.core.$ZodPipe)
    return schema._zod.def.in instanceof z.core.$ZodTransform ? schema._zod.def.out : schema._zod.def.in;
  if (
    schema instanceof z.core.$ZodOptional ||
    schema instanceof z.core.$ZodNullable ||
    schema instanceof z.core.$ZodDefault ||
    schema instanceof z.core.$ZodPrefault ||
    schema instanceof z.core.$ZodNonOptional ||
    schema instanceof z.core.$ZodReadonly ||
    schema instanceof z.core.$ZodCatch
  )
    return schema._zod.def.innerType;
  return null;
}

/**
 * The schemas, still wrapped, that hold for the value at `keys` within `data`. Of a union with a
 * discriminator only the options of the given kind count, if there are any.
 */
export function schemasAt(schema: Schema, keys: Keys, data: unknown): readonly Schema[] {
  const [key, ...rest] = keys;
  if (key === undefined) return [schema];
  const value = valueAt(data, [key]);
  return optionsFor(schema, data)
    .flatMap(plainSchemas)
    .flatMap((one) => childSchema(one, key))
    .flatMap((child) => schemasAt(child, rest, value));
}

/** The options of a union that fit the discriminator of the data; the schema itself where it has none. */
function optionsFor(schema: Schema, data: unknown): readonly Schema[] {
  if (schema instanceof z.core.$ZodDiscriminatedUnion) {
    const { discriminator, options } = schema._zod.def;
    const kind = valueAt(data, [discriminator]);
    const fitting = options.filter((option) =>
      [...(option._zod.propValues?.[discriminator] ?? [])].some((one) => one === kind),
    );
    return (fitting.length > 0 ? fitting : options).flatMap((option) => optionsFor(option, data));
  }
  if (schema instanceof z.core.$ZodUnion)
    return schema._zod.def.options.flatMap((option) => optionsFor(option, data));
  const inner = unwrapped(schema);
  return inner ? optionsFor(inner, data) : [schema];
}

function childSchema(schema: Schema, key: string | number): readonly Schema[] {
  if (schema instanceof z.core.$ZodObject) {
    const shape: Readonly<Record<string, Schema>> = schema._zod.def.shape;
    const own = Object.hasOwn(shape, key) ? shape[key] : schema._zod.def.catchall;
    return own ? [own] : [];
  }
  if (schema instanceof z.core.$ZodRecord) return [schema._zod.def.valueType];
  if (schema instanceof z.core.$ZodArray) return [schema._zod.def.element];
  if (!(schema instanceof z.core.$ZodTuple)) return [];
  const item = schema._zod.def.items[Number(key)] ?? schema._zod.def.rest;
  return item ? [item] : [];
}

/** The names that an object may have at `keys`: of every option that holds for the data, sorted. */
export function knownNames(schema: Schema, keys: Keys, data: unknown): readonly string[] {
  const value = valueAt(data, keys);
  const names = schemasAt(schema, keys, data)
    .flatMap((one) => optionsFor(one, value))
    .flatMap(plainSchemas)
    .flatMap(namesOf);
  return [...new Set(names)].sort();
}

function namesOf(schema: Schema): readonly string[] {
  if (schema instanceof z.core.$ZodObject) return Object.keys(schema._zod.def.shape);
  if (!(schema instanceof z.core.$ZodRecord)) return [];
  return [...(schema._zod.def.keyType._zod.values ?? [])].map(String);
}

/** The value at `keys`, by own properties alone; undefined where there is none. */
export function valueAt(data: unknown, keys: Keys): unknown {
  let value = data;
  for (const key of keys) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = Reflect.get(value, key);
  }
  return value;
}
