/** A JSON Schema (draft 2020-12) as plain data. */
export interface JsonSchema {
  readonly [keyword: string]: unknown;
}

/** The dialect that every schema names. */
export const dialect = 'https://json-schema.org/draft/2020-12/schema';

/** One of these names and no other. */
export function oneOfNames(names: readonly string[]): JsonSchema {
  return names.length > 0 ? { enum: names } : { not: {} };
}

/** These names, which an editor offers, and any other: they stand in the file that is being written. */
export function anyName(names: readonly string[]): JsonSchema {
  return names.length > 0 ? { anyOf: [{ enum: names }, {}] } : {};
}

/** One of these names, or a row or a list of them, whose names a pattern can't know. */
export function oneOrRow(names: readonly string[]): JsonSchema {
  return { anyOf: [oneOfNames(names), { type: 'string', pattern: String.raw`\.\.|,` }, { type: 'array' }] };
}

/** One of something, or a list of them. */
export function oneOrSeveral(one: JsonSchema): JsonSchema {
  return { anyOf: [one, { type: 'array', items: one }] };
}

/** Keys that an editor offers; any other may stand beside them. */
export function offeredKeys(names: readonly string[]): JsonSchema {
  return { properties: Object.fromEntries(names.map((name) => [name, {}])) };
}

/** A schema at a way through a file: keys, `*` for each key that no other way names, `[]` for the entries of a list. */
export type SchemaAt = readonly [way: readonly string[], schema: JsonSchema];

/** One schema of several that hold at ways through a file; it says nothing of all else. */
export function atWays(places: readonly SchemaAt[]): JsonSchema {
  const here = places.flatMap(([way, schema]) => (way.length === 0 ? [schema] : []));
  const below = new Map<string, SchemaAt[]>();
  for (const [[head, ...rest], schema] of places)
    if (head !== undefined) below.set(head, [...(below.get(head) ?? []), [rest, schema]]);
  const inside = (head: string) => atWays(below.get(head) ?? []);
  const names = [...below.keys()].filter((head) => head !== '*' && head !== '[]');
  const own: JsonSchema = {
    ...(names.length > 0 && { properties: Object.fromEntries(names.map((name) => [name, inside(name)])) }),
    ...(below.has('*') && { additionalProperties: inside('*') }),
    ...(below.has('[]') && { items: inside('[]') }),
  };
  const all = below.size > 0 ? [...here, own] : here;
  const [only = {}] = all;
  return all.length > 1 ? { allOf: all } : only;
}
