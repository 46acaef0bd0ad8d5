import { z } from 'zod';
import { type Audience, audiencesOf } from '../../model/audience.ts';
import type { Private } from '../../model/private.ts';
import { innerSchemas, insideOf } from '../../model/writing/schema-shape.ts';

/** What may be left of a value once the leaves of other audiences are gone. */
export type Visible<T> = T extends Private | string | number | boolean | null | undefined
  ? T | undefined
  : T extends readonly (infer E)[]
    ? readonly Visible<E>[]
    : { readonly [K in keyof T]?: Visible<T[K]> };

/**
 * Keeps only the leaves of a value that its schema declares for an audience. A leaf that was never declared
 * is kept for nobody; what holds no visible leaf goes altogether, so that not even a count is told.
 */
export function visibleTo<S extends z.ZodType>(
  schema: S,
  value: z.output<S>,
  audience: Audience,
): Visible<z.output<S>> | undefined {
  const kept = keep(schema, value, { audience, known: new Map() });
  if (kept === undefined) return undefined;
  if (!isPartOf(kept, value)) throw new Error('What is visible was not a part of the whole.');
  return kept;
}

/** Paths of the leaves of a schema that declare no audience; `*` stands for any key or index. */
export function undeclaredLeaves(schema: z.ZodType): string[] {
  return pathsWhere(schema, (declared) => declared.length === 0);
}

/** Paths of the leaves of a schema that an audience may not see, as `undeclaredLeaves` writes them. */
export function leavesHiddenFrom(schema: z.ZodType, audience: Audience): string[] {
  return pathsWhere(schema, (declared) => !declared.includes(audience));
}

function pathsWhere(schema: z.ZodType, isSought: (declared: readonly Audience[]) => boolean): string[] {
  const found = leavesOf(schema, '').filter(({ declared }) => isSought(declared));
  return [...new Set(found.map(({ path }) => path))];
}

interface Leaf {
  readonly path: string;
  readonly declared: readonly Audience[];
}

function leavesOf(schema: z.ZodType, path: string): Leaf[] {
  const declared = audiencesOf(schema);
  if (declared.length > 0) return [{ path, declared }];
  const inside = insideOf(schema);
  switch (inside.shape) {
    case 'object':
      return [...inside.fields].flatMap(([name, field]) => leavesOf(field, `${path}/${name}`));
    case 'list':
      return leavesOf(inside.element, `${path}/*`);
    case 'record':
      return leavesOf(inside.value, `${path}/*`);
    case 'tuple':
      return inside.items.flatMap((item, index) => leavesOf(item, `${path}/${index}`));
    case 'union':
      return inside.options.flatMap((option) => leavesOf(option, path));
    case 'wrapper':
      return leavesOf(inside.inner, path);
    case 'leaf':
      return [{ path, declared }];
  }
}

/** Who is looking, and which schemas hold anything for them. */
interface Look {
  readonly audience: Audience;
  readonly known: Map<z.ZodType, boolean>;
}

/** True where some leaf of a schema is declared for the audience. */
function holds(schema: z.ZodType, look: Look): boolean {
  const known = look.known.get(schema);
  if (known !== undefined) return known;
  const declared = audiencesOf(schema);
  const found =
    declared.length > 0
      ? declared.includes(look.audience)
      : innerSchemas(schema).some((inner) => holds(inner, look));
  look.known.set(schema, found);
  return found;
}

function keep(schema: z.ZodType, value: unknown, look: Look): unknown {
  if (!holds(schema, look)) return undefined;
  if (audiencesOf(schema).length > 0) return value;
  const inside = insideOf(schema);
  switch (inside.shape) {
    case 'object':
      return keepFields(value, look, (name) => inside.fields.get(name));
    case 'record':
      return keepFields(value, look, () => inside.value);
    case 'list':
      return keepItems(value, look, () => inside.element);
    case 'tuple':
      return keepItems(value, look, (index) => inside.items[index]);
    case 'union': {
      // Of alternatives, the one that the value was read by; nothing where that can't be told.
      const fitting = inside.options.find((option) => fits(option, value));
      return fitting === undefined ? undefined : keep(fitting, value, look);
    }
    case 'wrapper':
      return value === undefined || value === null ? value : keep(inside.inner, value, look);
    case 'leaf':
      return undefined;
  }
}

type SchemaOf<K> = (key: K) => z.ZodType | undefined;

function keepFields(value: unknown, look: Look, schemaOf: SchemaOf<string>): unknown {
  if (typeof value !== 'object' || value === null) return undefined;
  const kept = Object.entries(value).flatMap(([name, inner]) => {
    const schema = schemaOf(name);
    const visible = schema === undefined ? undefined : keep(schema, inner, look);
    return visible === undefined ? [] : [[name, visible] as const];
  });
  return Object.fromEntries(kept);
}

function keepItems(value: unknown, look: Look, schemaOf: SchemaOf<number>): unknown {
  if (!Array.isArray(value)) return undefined;
  return value.flatMap((item: unknown, index) => {
    const schema = schemaOf(index);
    const visible = schema === undefined ? undefined : keep(schema, item, look);
    return visible === undefined ? [] : [visible];
  });
}

/** True where a value that was read could have come from a schema: its literals and its keys agree. */
function fits(schema: z.ZodType, value: unknown): boolean {
  if (schema instanceof z.ZodLiteral) return schema.values.has(literal(value));
  const inside = insideOf(schema);
  if (inside.shape === 'wrapper') return fits(inside.inner, value);
  if (inside.shape !== 'object') return true;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const held = new Map<string, unknown>(Object.entries(value));
  return (
    [...held.keys()].every((name) => inside.fields.has(name)) &&
    [...inside.fields].every(
      ([name, field]) => !(field instanceof z.ZodLiteral) || fits(field, held.get(name)),
    )
  );
}

function literal(value: unknown): string | number | boolean | null | undefined {
  const plain = typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
  return plain || value === null ? value : undefined;
}

/** True where everything that was kept stands in the whole as well. */
function isPartOf<T>(kept: unknown, whole: T): kept is Visible<T> {
  if (Object.is(kept, whole)) return true;
  if (typeof kept !== 'object' || kept === null || typeof whole !== 'object' || whole === null) return false;
  if (Array.isArray(kept)) return Array.isArray(whole) && isInOrder(kept, whole);
  const held = new Map<string, unknown>(Object.entries(whole));
  return Object.entries(kept).every(([name, inner]) => isPartOf(inner, held.get(name)));
}

/** True where the kept items stand in the whole list in the same order, others left out between them. */
function isInOrder(kept: readonly unknown[], whole: readonly unknown[]): boolean {
  let found = 0;
  for (const one of whole) if (found < kept.length && isPartOf(kept[found], one)) found += 1;
  return found === kept.length;
}
