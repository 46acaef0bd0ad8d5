import { z } from 'zod';
import { jobSchema } from '../../lib/model/content/job.ts';
import { partBase } from '../../lib/model/content/part-base.ts';
import { shopSchema } from '../../lib/model/content/shop.ts';
import { vehicleSchema } from '../../lib/model/content/vehicle.ts';
import { equipmentBase } from '../../lib/model/kinds/fields/equipment.ts';
import { menuFilterFields } from '../../lib/model/kinds/fields/menu-filters.ts';
import { supplySchema } from '../../lib/model/kinds/fields/supply.ts';
import { kinds } from '../../lib/model/kinds/index.ts';
import { fileSchema } from '../../lib/model/short-forms/file-schema.ts';
import { unwrapped } from '../../lib/read/schema/schema-walk.ts';
import { isJobSheet, type Sheet, sheets } from './shop.ts';

type Schema = z.core.$ZodType;

/** A field of a schema: the names on its way, `*` for a name that the writer chooses, `[]` for a place in a list. */
export type Field = string;

/** Every field that takes a value of its own, by its way through the schema. */
export function leavesOf(schema: Schema, way = ''): Field[] {
  if (schema instanceof z.core.$ZodDiscriminatedUnion) {
    const { discriminator, options } = schema._zod.def;
    return options.flatMap((option) => leavesOf(option, `${way}:${kindOf(option, discriminator)}`));
  }
  if (schema instanceof z.core.$ZodUnion) {
    const inner = schema._zod.def.options.flatMap((option) => leavesOf(option, way));
    return [...new Set(inner)];
  }
  if (schema instanceof z.core.$ZodObject)
    return Object.entries<Schema>(schema._zod.def.shape).flatMap(([key, child]) =>
      leavesOf(child, way ? `${way}/${key}` : key),
    );
  if (schema instanceof z.core.$ZodRecord) return leavesOf(schema._zod.def.valueType, `${way}/*`);
  if (schema instanceof z.core.$ZodArray) return leavesOf(schema._zod.def.element, `${way}[]`);
  if (schema instanceof z.core.$ZodTuple)
    return [...new Set(schema._zod.def.items.flatMap((item) => leavesOf(item, `${way}[]`)))];
  const inner = unwrapped(schema);
  return inner ? leavesOf(inner, way) : [way];
}

function kindOf(schema: Schema, key: string): string {
  return String([...(schema._zod.propValues?.[key] ?? [])][0]);
}

/** Fields that parts of many kinds share, by the schema that stands under their name. */
const shared: Readonly<Record<string, Schema>> = Object.fromEntries(
  Object.entries({ ...equipmentBase, ...menuFilterFields, supply: supplySchema }).map(([key, schema]) => [
    key,
    fileSchema(schema),
  ]),
);

/** The fields of all kinds of parts: what they share once, under `part`, all else under their kind. */
export function partLeaves(): Field[] {
  return [
    ...new Set(
      Object.entries(kinds).flatMap(([kind, { schema }]) =>
        Object.entries(fieldsOf(fileSchema(schema))).flatMap(([key, child]) =>
          leavesOf(child, `${partGroup(kind, key, child)}/${key}`),
        ),
      ),
    ),
  ];
}

/** The fields of an object by their names; none where it is no object. */
function fieldsOf(schema: Schema): Readonly<Record<string, Schema>> {
  return schema instanceof z.core.$ZodObject ? schema._zod.def.shape : {};
}

/** `part` for a field that a kind shares with others, else the kind. */
export function partGroup(kind: string, key: string, child: Schema): string {
  return key === 'kind' || key in partBase || shared[key] === child ? 'part' : kind;
}

/** House rules are bounded where they are defined, and are one class here. */
const asOneClass = (field: Field): Field => field.replace(/^(shop\/rules|shop\/times)\/.*/, '$1/*');

/** Every field of job, vehicle, shop and parts. */
export function allFields(): ReadonlySet<Field> {
  const under = (sheet: string, schema: z.ZodType) =>
    leavesOf(fileSchema(schema)).map((way) => asOneClass(`${sheet}/${way}`));
  return new Set([
    ...under('job', jobSchema),
    ...under('vehicle', vehicleSchema),
    ...under('shop', shopSchema),
    ...partLeaves(),
  ]);
}

/** The field that a value stands in: the way of its keys through the schema, as `leavesOf` names it. */
export function wayOf(schema: Schema, keys: readonly string[], data: unknown, way = ''): Field {
  const [key, ...rest] = keys;
  const child = (next: Schema, named: string) => wayOf(next, rest, at(data, key ?? ''), named);
  if (schema instanceof z.core.$ZodDiscriminatedUnion) {
    const { discriminator, options } = schema._zod.def;
    const kind = String(at(data, discriminator));
    const option = options.find((one) => kindOf(one, discriminator) === kind);
    if (!option) throw new Error(`${way} is of no known ${discriminator}.`);
    return wayOf(option, keys, data, `${way}:${kind}`);
  }
  if (schema instanceof z.core.$ZodUnion) {
    const { options } = schema._zod.def;
    const listed = /^\d+$/.test(key ?? '') && options.find((one) => one instanceof z.core.$ZodArray);
    const option =
      options.find((one) => isWrittenAs(one, data, key)) ||
      listed ||
      options.find(
        (one) => key === undefined || !(one instanceof z.core.$ZodObject) || key in one._zod.def.shape,
      );
    return option ? wayOf(option, keys, data, way) : way;
  }
  const inner = unwrapped(schema);
  if (inner) return wayOf(inner, keys, data, way);
  if (key === undefined) return leavesOf(schema, way)[0] ?? way;
  if (schema instanceof z.core.$ZodObject) {
    const next: Schema | undefined = schema._zod.def.shape[key];
    if (!next) throw new Error(`${way} has no ${key}.`);
    return child(next, way ? `${way}/${key}` : key);
  }
  if (schema instanceof z.core.$ZodRecord) return child(schema._zod.def.valueType, `${way}/*`);
  if (schema instanceof z.core.$ZodArray) return child(schema._zod.def.element, `${way}[]`);
  if (schema instanceof z.core.$ZodTuple) {
    const [item] = schema._zod.def.items;
    if (item) return child(item, `${way}[]`);
  }
  throw new Error(`${way} has nothing under ${key}.`);
}

/** True for the option of a union that a value is written in: a list, a block with a name, or one value. */
function isWrittenAs(schema: Schema, data: unknown, key: string | undefined): boolean {
  const inner = unwrapped(schema);
  if (inner) return isWrittenAs(inner, data, key);
  if (schema instanceof z.core.$ZodUnion)
    return schema._zod.def.options.some((one) => isWrittenAs(one, data, key));
  if (data === undefined) return false;
  const isBlock = schema instanceof z.core.$ZodObject || schema instanceof z.core.$ZodRecord;
  if (Array.isArray(data)) {
    const [first]: readonly unknown[] = data;
    return schema instanceof z.core.$ZodArray && isWrittenAs(schema._zod.def.element, first, undefined);
  }
  if (typeof data !== 'object' || data === null)
    return !isBlock && !(schema instanceof z.core.$ZodArray) && !(schema instanceof z.core.$ZodTuple);
  if (!isBlock) return false;
  if (key === undefined || !(schema instanceof z.core.$ZodObject)) return true;
  const { shape } = schema._zod.def;
  return [key, ...Object.keys(data)].every((name) => name in shape);
}

function at(data: unknown, key: string): unknown {
  return typeof data === 'object' && data !== null ? Reflect.get(data, key) : undefined;
}

/** The field that a value of a file stands in. */
export function fieldOf(sheet: Sheet, keys: readonly string[], data: unknown): Field {
  if (sheet === 'parts') return partField(keys, data);
  const name = isJobSheet(sheet) ? 'job' : sheet;
  return asOneClass(`${name}/${wayOf(fileSchema(sheets[sheet].schema), keys, data)}`);
}

function partField([, id = '', ...rest]: readonly string[], data: unknown): Field {
  const part = at(at(data, 'parts'), id);
  const kind = String(at(part, 'kind'));
  const [key = ''] = rest;
  const entry = Object.entries(kinds).find(([name]) => name === kind)?.[1];
  if (!entry) return 'part/kind';
  const schema = fileSchema(entry.schema);
  const child = fieldsOf(schema)[key];
  if (!child) throw new Error(`A ${kind} has no ${key}.`);
  return `${partGroup(kind, key, child)}/${wayOf(schema, rest, part)}`;
}
