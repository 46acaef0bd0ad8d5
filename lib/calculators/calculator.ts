import { type Fault, isFault } from '../model/fault.ts';
import type { Trace, Traced } from '../model/trace.ts';
import type { Bench } from './bench.ts';
import { type Field, isUnread } from './field.ts';

/** A result as a sheet would print it, with the working that stands behind it. */
export interface Figure {
  readonly label: string;
  /** Rounded to its safe side, with its unit. */
  readonly text: string;
  readonly beside?: string;
  readonly trace?: Trace;
}

/** The working of a number that is not shown by itself. */
export interface Step {
  readonly label: string;
  readonly trace: Trace;
}

/** A column of a table of results. */
export interface Column {
  readonly title: string;
  readonly isFigure?: boolean;
}

export interface AnswerTable {
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
}

/** What a calculator answers. */
export interface Answer {
  /** The result in one sentence: it is read aloud when it changes. */
  readonly says: string;
  /** What is to be minded with it. */
  readonly minds: readonly string[];
  readonly figures: readonly Figure[];
  readonly steps: readonly Step[];
  readonly table?: AnswerTable;
}

/** An entry that can't be read, and why. */
export interface UnreadEntry {
  readonly field: string;
  readonly message: string;
}

/** An answer, entries that can't be read, or what can't be computed from those that can. */
export type Answered = Answer | { readonly unread: readonly UnreadEntry[] } | Fault;

type Fields = Readonly<Record<string, Field<unknown>>>;
type ValueOf<F> = F extends Field<infer T> ? T : never;
/** What is read of the entries of a calculator, by their names. */
export type ValuesOf<F extends Fields> = { readonly [K in keyof F]: ValueOf<F[K]> };

/** One calculator: its entries, and what it makes of them. */
export interface Calculator {
  readonly id: string;
  readonly title: string;
  /** What it answers, in one sentence. */
  readonly asks: string;
  readonly fields: Fields;
  /** Answers entries as written; one that is left out counts as empty. */
  readonly answer: (written: Readonly<Record<string, string>>, bench: Bench) => Answered;
}

/** What a calculator is made from. */
export interface CalculatorParts<F extends Fields> extends Omit<Calculator, 'answer' | 'fields'> {
  readonly fields: F;
  readonly compute: (values: ValuesOf<F>, bench: Bench) => Answer | Fault;
}

/** A calculator whose entries are all read before anything is computed: every fault is told at once. */
export function calculator<F extends Fields>({ compute, ...of }: CalculatorParts<F>): Calculator {
  return {
    ...of,
    answer: (written, bench) => {
      const unread: UnreadEntry[] = [];
      const values: Record<string, unknown> = {};
      for (const [name, field] of Object.entries<Field<unknown>>(of.fields)) {
        const value = field.read(written[name] ?? '');
        if (isUnread(value)) unread.push({ field: name, message: value.unread });
        else values[name] = value;
      }
      if (unread.length > 0) return { unread };
      return isRead(values, of.fields) ? compute(values, bench) : { unread };
    },
  };
}

/** Each value was read by its own field, so one for each of them is all that there is to look at. */
function isRead<F extends Fields>(
  values: Readonly<Record<string, unknown>>,
  fields: F,
): values is ValuesOf<F> {
  return Object.keys(fields).every((name) => name in values);
}

/** True for an answer. */
export function isAnswer(answered: Answered): answered is Answer {
  return !isFault(answered) && !('unread' in answered);
}

/** A figure with its working. */
export function figureOf(label: string, text: string, { trace }: Traced<number>, beside?: string): Figure {
  return { label, text, trace, ...(beside !== undefined && { beside }) };
}

/** What a form begins with, by the names of its entries. */
export function initialEntries({ fields }: Pick<Calculator, 'fields'>, bench: Bench): Record<string, string> {
  return Object.fromEntries(
    Object.entries(fields).map(([name, { initial }]) => [
      name,
      typeof initial === 'string' ? initial : initial(bench),
    ]),
  );
}
