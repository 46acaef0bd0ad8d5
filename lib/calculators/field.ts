import { z } from 'zod';
import { type HouseRuleName, houseRuleDefinition, houseRuleValue } from '../model/house-rules.ts';
import { writeQuantity } from '../model/quantity/quantity.ts';
import { issueWords } from '../read/schema/issue-words.ts';
import { sentence } from '../read/schema/subject.ts';
import { coreScalar } from '../read/yaml/core-scalar.ts';
import type { Bench } from './bench.ts';

/** What can't be read of an entry, in the words that the reader of files has for it. */
export interface Unread {
  readonly unread: string;
}

/** One of the words that an entry may be. */
export interface Option {
  readonly value: string;
  /** As it is shown; the value itself where left out. */
  readonly title?: string;
}

/** What an entry begins with: a text, or one that follows from the shop. */
export type Initial = string | ((bench: Bench) => string);

/** An entry of a calculator, written as in a file of the shop. */
export interface Field<T> {
  readonly label: string;
  readonly hint?: string;
  readonly initial: Initial;
  /** True where it may be left empty. */
  readonly isOptional: boolean;
  /** The words that it may be; left out where it is written. */
  readonly options?: readonly Option[];
  readonly read: (written: string) => T | Unread;
}

/** True for an entry that can't be read. */
export function isUnread(value: unknown): value is Unread {
  return typeof value === 'object' && value !== null && 'unread' in value;
}

/** What is said of an entry beside its schema. */
export interface Asked {
  readonly label: string;
  readonly hint?: string;
  readonly initial: Initial;
}

/** An entry that is read by a schema of the files, and must be there. */
export function required<T>(schema: z.ZodType<T>, asked: Asked): Field<T> {
  return { ...asked, isOptional: false, read: (written) => readBy(schema, asked.label, written) };
}

/** The same where it may be left empty: then it is null. */
export function optional<T>(schema: z.ZodType<T>, asked: Asked): Field<T | null> {
  const read = (written: string): T | null | Unread =>
    written.trim() === '' ? null : readBy(schema, asked.label, written);
  return { ...asked, isOptional: true, read };
}

/** One of a closed set of words. */
export function choice<const V extends string>(
  options: readonly (Option & { readonly value: V })[],
  asked: Asked,
): Field<V> {
  const schema = z.enum(options.map(({ value }) => value));
  return { ...asked, isOptional: false, options, read: (written) => judged(schema, asked.label, written) };
}

/** Yes or no. */
export function yesNo(asked: Asked): Field<boolean> {
  const { read, ...words } = choice([{ value: 'yes' }, { value: 'no' }], asked);
  return {
    ...words,
    read: (written) => {
      const value = read(written);
      return isUnread(value) ? value : value === 'yes';
    },
  };
}

/** The value of a house rule, within its bounds: it begins with the shop's. */
export function ruleField(name: HouseRuleName, asked: Omit<Asked, 'initial'>): Field<number> {
  const { dimension } = houseRuleDefinition(name);
  return required<number>(houseRuleValue(name), {
    ...asked,
    initial: ({ rules }) =>
      dimension === 'count' ? String(rules[name].value) : writeQuantity(rules[name].value, dimension),
  });
}

/** Reads an entry as the value of a name in a file is read, and tells what is wrong with it in the same words. */
function readBy<T>(schema: z.ZodType<T>, label: string, written: string): T | Unread {
  const value = coreScalar(written.trim());
  if (typeof value === 'object' && value !== null) return { unread: sentence(label, value.unreadable) };
  return judged(schema, label, value);
}

function judged<T>(schema: z.ZodType<T>, label: string, value: unknown): T | Unread {
  const read = schema.safeParse(value);
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  const words = issue ? issueWords(issue, { value, schemas: [schema] }) : 'does not fit';
  return { unread: sentence(label, words) };
}
