import { dump } from 'js-yaml';
import { z } from 'zod';
import { hasFields, type WrittenValue, writtenValueSchema } from '../../model/content/proposal.ts';
import { fieldExample } from '../../model/writing/field-example.ts';
import type { Written } from '../../model/writing/field-text.ts';
import { flowText } from '../yaml/write-value.ts';
import { plainSchemas } from './schema-walk.ts';

type Schema = z.core.$ZodType;

/** What a schema takes, in plain words: `a text, such as amp-front`, `one of pass, fail`, `a list`. */
export function expectation(schemas: readonly Schema[]): string {
  const plain = schemas.flatMap(plainSchemas);
  const values = [...new Set(plain.flatMap(valuesOf))];
  const others = plain.filter((one) => valuesOf(one).length === 0);
  const words = [...new Set(others.map((one) => withExample(one)))];
  return orList(values.length > 0 ? [oneOfValues(values), ...words] : words) || 'something else';
}

/** `pass`, `pass or fail`, or `one of a, b, c`. */
export function oneOfValues(values: readonly unknown[]): string {
  const words = values.map((one) => (one === null ? 'nothing' : String(one)));
  return words.length < 3 ? words.join(' or ') : `one of ${words.join(', ')}`;
}

function orList(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} or ${last}`;
}

function valuesOf(schema: Schema): readonly unknown[] {
  if (schema instanceof z.core.$ZodEnum || schema instanceof z.core.$ZodLiteral)
    return [...(schema._zod.values ?? [])];
  return [];
}

function withExample(schema: Schema): string {
  const example = exampleOf(schema);
  const { description } = z.globalRegistry.get(schema) ?? {};
  const what = description ? lowered(description) : typeWords(schema._zod.def.type);
  return example === null ? what : `${what}, such as ${example}`;
}

function lowered(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1).replace(/\.$/, '');
}

/** What a type of value is called in a file. */
export function typeWords(type: string): string {
  return Object.hasOwn(types, type) ? (types[type] ?? unnamed) : unnamed;
}

const unnamed = 'something else';
const types: Readonly<Record<string, string>> = {
  string: 'a text',
  template_literal: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  null: 'nothing',
  object: 'lines of the form name: value',
  record: 'lines of the form name: value',
  array: 'a list',
  tuple: 'a list',
};

/** The one value that a field can have, as it stands behind a colon; null where it can have several. */
export function onlyValue(schemas: readonly Schema[]): string | null {
  const plain = schemas.flatMap(plainSchemas);
  const [first, ...others] = new Set(plain.flatMap(valuesOf));
  const isClosed = plain.every((one) => valuesOf(one).length > 0);
  return first === undefined || others.length > 0 || !isClosed ? null : written(first);
}

/**
 * How a field may be written behind its colon: its own example, or one made of what must stand in it. A long one is told
 * by its names alone. Null for a closed set of words, which is told whole, and where nothing tells an example.
 */
export function fieldExampleText(schema: Schema): string | null {
  const isClosed = plainSchemas(schema).some(
    (one) => valuesOf(one).length > 0 || one instanceof z.core.$ZodBoolean,
  );
  if (isClosed || !(schema instanceof z.ZodType)) return null;
  const example = fieldExample(schema);
  if (example === undefined || example === null) return null;
  if (typeof example !== 'object') return written(example);
  const whole = written(example);
  const isWhole = whole.length <= mostLetters && !hasGap(example);
  if (isWhole || Array.isArray(example)) return isWhole ? whole : null;
  return `{ ${Object.keys(example)
    .map((name) => `${name}: ...`)
    .join(', ')} }`;
}

/** An example that is longer is not read. */
const mostLetters = 90;

/** True where nothing tells how a value inside is written. */
function hasGap(example: Written): boolean {
  if (typeof example !== 'object' || example === null) return example === null;
  return Object.values(example).some(hasGap);
}

/** A value as it may stand behind a colon. */
function written(value: unknown): string {
  return hasFields(value) || isRow(value)
    ? flowText(value)
    : dump(value, { flowLevel: 0, lineWidth: -1 }).trimEnd();
}

function isRow(value: unknown): value is WrittenValue[] {
  return writtenValueSchema.array().safeParse(value).success;
}

/** The first example that a schema carries, as it may stand behind a colon; null where it carries none. */
function exampleOf(schema: Schema): string | null {
  for (const one of plainSchemas(schema)) {
    const examples = z.globalRegistry.get(one)?.examples;
    const example: unknown = Array.isArray(examples) ? examples[0] : undefined;
    if (example !== undefined) return written(example);
  }
  return null;
}
