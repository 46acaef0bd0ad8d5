import type { z } from 'zod';
import { hasFields, type WrittenValue } from '../../../model/content/proposal.ts';
import { keysOf } from '../../../model/place.ts';
import type { Problem } from '../../../model/problem.ts';
import { insideOf, withoutWrappers } from '../../../model/writing/schema-shape.ts';
import type { JobFields } from './for-space.ts';

/** A file that reads without a problem, and what was left out for it. */
export interface ReadWhole {
  readonly fields: JobFields;
  /** Ways of what is left out, each with why. */
  readonly left: readonly { readonly way: readonly string[]; readonly why: string }[];
}

/** A file loses something in each round, and none has as many values on one way. */
const mostRounds = 40;

/**
 * Leaves out of a file what does not read: what a name stands for that is not there, with all that names it in turn. Each
 * time the least that the schema lets go. Null where that comes to no end: what is wrong lies elsewhere.
 */
export function readWhole(
  schema: z.ZodType,
  fields: JobFields,
  problemsOf: (fields: JobFields) => readonly Problem[],
): ReadWhole | null {
  let whole = fields;
  const left: ReadWhole['left'][number][] = [];
  for (let round = 0; round < mostRounds; round += 1) {
    const problems = problemsOf(whole);
    if (problems.length === 0) return { fields: whole, left };
    const ways = problems.flatMap(({ where, message }) => {
      const way = leastToLose(schema, keysOf(where.path), whole);
      return way.length === 0 ? [] : [{ way, why: message }];
    });
    if (ways.length === 0) return null;
    const once = ways.filter(
      ({ way }, at) => ways.findIndex((one) => one.way.join('/') === way.join('/')) === at,
    );
    left.push(...once);
    // The last goes first, so that the places of those before it in a list stay as they are.
    whole = once.toReversed().reduce<JobFields>((rest, { way }) => without(rest, way), whole);
  }
  return null;
}

/** The longest part of a way that ends in something that may be missing. */
function leastToLose(schema: z.ZodType, keys: readonly string[], data: WrittenValue): readonly string[] {
  let least = 0;
  let options: readonly z.ZodType[] = [schema];
  let value: WrittenValue | undefined = data;
  for (const [at, key] of keys.entries()) {
    const inner: Child[] = options.flatMap((one) => childrenOf(one, key));
    value = valueIn(value, key);
    if (value === undefined || inner.length === 0) break;
    if (inner.some(({ mayLack }) => mayLack)) least = at + 1;
    options = inner.map(({ child }) => child);
  }
  return keys.slice(0, least);
}

interface Child {
  readonly child: z.ZodType;
  /** Whether what holds it reads without it. */
  readonly mayLack: boolean;
}

function childrenOf(schema: z.ZodType, key: string): Child[] {
  const inside = insideOf(withoutWrappers(schema));
  switch (inside.shape) {
    case 'object': {
      const child = inside.fields.get(key);
      return child ? [{ child, mayLack: child.safeParse(undefined).success }] : [];
    }
    case 'record':
      return [{ child: inside.value, mayLack: true }];
    case 'list':
      return [{ child: inside.element, mayLack: true }];
    case 'union':
      return inside.options.flatMap((option) => childrenOf(option, key));
    default:
      return [];
  }
}

function valueIn(value: WrittenValue | undefined, key: string): WrittenValue | undefined {
  if (Array.isArray(value)) return value[Number(key)];
  return hasFields(value) ? value[key] : undefined;
}

/** The same without what stands at a way. */
function without(fields: JobFields, way: readonly string[]): JobFields {
  const [key = '', ...rest] = way;
  const own = fields[key];
  if (own === undefined) return fields;
  if (rest.length === 0) {
    const { [key]: _, ...others } = fields;
    return others;
  }
  return { ...fields, [key]: inner(own, rest) };
}

function inner(value: WrittenValue, way: readonly string[]): WrittenValue {
  if (hasFields(value)) return without(value, way);
  if (!Array.isArray(value)) return value;
  const [key = '', ...rest] = way;
  return value.flatMap((one: WrittenValue, at): WrittenValue[] =>
    at !== Number(key) ? [one] : rest.length === 0 ? [] : [inner(one, rest)],
  );
}
