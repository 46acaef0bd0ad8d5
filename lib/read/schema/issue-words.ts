import type { z } from 'zod';
import { mayBeLeftOut } from '../../model/writing/field-example.ts';
import { wordMeant } from '../../model/writing/other-words.ts';
import { nearestName } from '../names/nearest-name.ts';
import { expectation, fieldExampleText, oneOfValues, typeWords } from './expectation.ts';

type Issue = z.core.$ZodIssue;
type Coded<C extends Issue['code']> = Extract<Issue, { code: C }>;

/** What is known of the value that an issue is about. */
export interface Given {
  readonly value: unknown;
  /** The schemas that hold at its place. */
  readonly schemas: readonly z.core.$ZodType[];
}

/**
 * The predicate of a sentence about one issue, such as `is a list, but needs a text`. A message that the
 * schema gives is taken; what the schema library would say itself never is.
 */
export function issueWords(issue: Issue, given: Given): string {
  if (given.value === null) return emptyWords(given.schemas);
  return saidBySchema(issue) ? issue.message : wordsByCode(issue, given);
}

function emptyWords(schemas: Given['schemas']): string {
  const optional = schemas.some(mayBeLeftOut);
  return `is left empty; write ${expectation(schemas)}${optional ? ', or leave the name out too' : ''}`;
}

/** True where the message is one of ours: the library's own all begin with one of these words. */
export function saidBySchema(issue: Issue): boolean {
  return !/^(?:Invalid|Too|Unrecognized|$)/.test(issue.message);
}

function wordsByCode(issue: Issue, given: Given): string {
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(issue, given);
    case 'invalid_value':
      return unknownValue(given.value, issue.values);
    case 'invalid_union':
      return 'options' in issue && issue.options
        ? unknownValue(given.value, issue.options)
        : `does not fit${needs(given)}`;
    case 'too_small':
      return `${limitWords(issue.origin, 'small', Number(issue.minimum), issue.inclusive ?? true)}${issue.origin === 'array' ? structureExample(given.schemas) : ''}`;
    case 'too_big':
      return limitWords(issue.origin, 'big', Number(issue.maximum), issue.inclusive ?? true);
    case 'not_multiple_of':
      return `must be a multiple of ${issue.divisor}`;
    case 'invalid_format':
      return formatWords(issue, given);
    case 'invalid_key':
    case 'invalid_element':
    case 'unrecognized_keys':
    case 'custom':
      return `does not fit${needs(given)}`;
  }
}

function needs({ schemas }: Given): string {
  return schemas.length > 0 ? `; it needs ${expectation(schemas)}${structureExample(schemas)}` : '';
}

/** How a list, or lines of names and values, may be written; empty where a value is one text. */
function structureExample(schemas: Given['schemas']): string {
  const example = schemas.map(fieldExampleText).find((one) => one !== null && /^[[{]/.test(one));
  return example ? `, such as ${example}` : '';
}

function wrongType(issue: Coded<'invalid_type'>, { value, schemas }: Given): string {
  if (issue.expected === 'never') return "can't stand here: leave it out";
  if (issue.expected === 'int' && typeof value === 'number') return 'needs a whole number';
  const needs = schemas.length > 0 ? expectation(schemas) : typeWords(issue.expected);
  return `is ${givenWords(value)}, but needs ${needs}${structureExample(schemas)}`;
}

/** What stands in the file, in words that do not repeat it: it may be private. */
function givenWords(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'boolean') return 'true or false';
  return typeWords(value === null || value === undefined ? 'null' : typeof value);
}

function unknownValue(value: unknown, known: readonly unknown[]): string {
  if (typeof value === 'object' || value === undefined)
    return `is ${givenWords(value)}, but needs ${oneOfValues(known)}`;
  const words = known.map(String);
  const near = typeof value === 'string' ? (wordMeant(value, words) ?? nearestName(value, words)) : null;
  const hint = near === null ? '' : `; did you mean ${near}?`;
  const shown = String(value).slice(0, 40);
  return `can't be ${typeof value === 'string' ? `"${shown}"` : shown}: it needs ${oneOfValues(known)}${hint}`;
}

function limitWords(origin: string, side: 'small' | 'big', limit: number, inclusive: boolean): string {
  const low = side === 'small';
  if (origin === 'string') return `must have at ${low ? 'least' : 'most'} ${counted(limit, 'letter')}`;
  if (origin === 'array' || origin === 'set' || origin === 'map' || origin === 'object')
    return `must have at ${low ? 'least' : 'most'} ${counted(limit, 'entry')}`;
  if (inclusive) return `must be ${limit} or ${low ? 'more' : 'less'}`;
  return `must be ${low ? 'more' : 'less'} than ${limit}`;
}

function counted(count: number, what: 'letter' | 'entry'): string {
  if (count === 1) return `1 ${what}`;
  return `${count} ${what === 'entry' ? 'entries' : 'letters'}`;
}

function formatWords(issue: Coded<'invalid_format'>, given: Given): string {
  if ('prefix' in issue) return `must begin with ${issue.prefix}`;
  if ('suffix' in issue) return `must end with ${issue.suffix}`;
  if ('includes' in issue) return `must have ${issue.includes} in it`;
  return `is not written as it must be${needs(given)}`;
}
