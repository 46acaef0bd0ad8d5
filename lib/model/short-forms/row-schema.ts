import { z } from 'zod';
import { builders } from '../audience.ts';
import { faultBy, faultless, id, quantityWithin, text } from '../fields.ts';
import { mayBeLeftOut } from '../writing/field-example.ts';
import { insideOf } from '../writing/schema-shape.ts';
import { rowForm, rowNames } from './row-names.ts';
import { examplesOf, fieldsOf, inPlaceOf, withField, wordsOf } from './schema-edits.ts';
import { type Along, pairRoles } from './short-form.ts';

/** Values by name as a file may hold them: one name may stand for several, and some fields run along them. */
export function rowsSchema(record: z.ZodType, along: Readonly<Record<string, Along>>): z.ZodType {
  const inside = insideOf(record);
  if (!(record instanceof z.ZodRecord) || inside.shape !== 'record')
    throw new Error('Rows stand among values by name.');
  const valueType = Object.entries(along).reduce((entry, [name, how]) => {
    const field = fieldsOf(entry).get(name);
    return field ? alongRow[how](entry, name, field) : entry;
  }, inside.value);
  const keyType = rowKey(record.def.keyType);
  return record.clone({ ...record.def, keyType, valueType }, { parent: true });
}

/** A name, or a row of names each of which may stand there. */
function rowKey(key: z.core.$ZodType): z.ZodString {
  const { examples = [] } = z.globalRegistry.get(key) ?? {};
  const faultOf = (written: string): string | null => {
    const names = rowNames(written);
    if ('unreadable' in names) return names.unreadable;
    return names.map((name) => faultBy(key, name)).find((fault) => fault !== null) ?? null;
  };
  return z
    .string()
    .check(faultless(faultOf))
    .meta({ examples, pattern: rowForm(key === id ? 'id' : 'any') });
}

type Extend = (entry: z.ZodType, name: string, field: z.ZodType) => z.ZodType;

const pitch = builders(
  quantityWithin('length', { above: 0, most: 0.3 }).optional(),
  'Of a row: the distance from each place to the next; its first place stands under at.',
  { example: '7/16 in' },
);

const alongRow: Readonly<Record<Along, Extend>> = {
  pitch: (entry) => withField(entry, 'pitch', pitch),
  list: (entry, name, field) => withField(entry, name, z.union([field, z.array(field).min(2)])),
  names: (entry, name, field) => {
    const one = text(examplesOf(field)[0] ?? 'CH1..4');
    return withField(entry, name, inPlaceOf(field, optionalAs(field, z.union([one, z.array(one).min(1)]))));
  },
  groups: (entry, name, field) =>
    withField(entry, name, inPlaceOf(field, optionalAs(field, z.union([field, groupsOf(field)])))),
  pairs: (entry, name, field) =>
    withField(entry, name, inPlaceOf(field, z.enum([...wordsOf(field), ...Object.keys(pairRoles)]))),
};

function optionalAs(field: z.ZodType, own: z.ZodType): z.ZodType {
  return mayBeLeftOut(field) ? own.optional() : own;
}

const number = z.int().positive();

/** For each name of a row some names in a list of their own, or one name for several. */
function groupsOf(field: z.ZodType): z.ZodType {
  const one = text(examplesOf(field)[0] ?? '1..2');
  return z.array(z.union([one, number, z.array(z.union([one, number])).min(1)])).min(2);
}

/** A list of names of which one may stand for several, or one such name. */
export function namesSchema(list: z.ZodType): z.ZodType {
  const inside = insideOf(list);
  if (inside.shape !== 'list') throw new Error('Names stand in a list.');
  const row = text(examplesOf(inside.element)[0] ?? '1..4');
  const least = list.safeParse([]).success ? 0 : 1;
  return z.union([z.array(z.union([inside.element, number])).min(least), number, row]);
}
