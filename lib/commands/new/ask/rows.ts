import { z } from 'zod';
import { shortFormOf, wordFor } from '../../../model/short-forms/short-form.ts';
import type { AskedColumn } from '../../../model/survey/asked-table.ts';
import { withoutWrappers } from '../../../model/writing/schema-shape.ts';
import { issueWords } from '../../../read/schema/issue-words.ts';
import { choicesOf } from './choices.ts';
import { wholeNames } from './shared-ending.ts';

/** What stands in a cell, as a file has it. */
export type Cell = Word | Word[];
type Word = string | number | boolean;

/** A row by its columns; what was left empty is missing. */
export interface Row {
  readonly cells: Readonly<Record<string, Cell>>;
  /** What follows, where the last column takes whatever follows. */
  readonly rest: readonly string[];
  /** Titles of the columns that were left open by `?`. */
  readonly open: readonly string[];
}

/** Parts cells, but not the two halves of a number with a decimal comma: the reader tells how that is written. */
export const between = /(?<!\d),|,(?!\d)/;

/** What stands for what nobody knows yet. */
export const unknown = '?';

/** True for a line in which something is not known yet. */
export function hasUnknown(line: string): boolean {
  return line.split(between).some((cell) => cell.trim() === unknown);
}

/** Columns that the rest of a file leans on: without them there is no row. */
const named: ReadonlySet<string> = new Set([
  'name',
  'names',
  'title',
  'what',
  'part',
  'from',
  'to',
  'in',
  'outputs',
  'inputs',
]);

/** True for a column whose cell may stay open until it is known. */
export function mayBeUnknown({ key }: AskedColumn): boolean {
  return !named.has(key);
}

/** Reads a line with a comma between its cells; what is wrong with it as a text. */
export function readRow(columns: readonly AskedColumn[], line: string): Row | string {
  const written = columns.length === 1 ? [line.trim()] : line.split(between).map((cell) => cell.trim());
  const hasRest = columns.at(-1)?.rest === true;
  const own = hasRest ? columns.slice(0, -1) : columns;
  const listed = written.slice(own.length).filter((cell) => cell !== '');
  const rest = listed.filter((cell) => cell !== unknown);
  if (!hasRest && rest.length > 0)
    return `has ${written.length} values, and ${own.length} are asked for: ${titles(columns)}`;
  if (rest.length > 0 && rest.length < listed.length)
    return `has ? alone among its ${columns.at(-1)?.title}: write each whole, with ? in place of what is not measured`;
  const cells: Record<string, Cell> = {};
  const open: string[] = [];
  for (const [at, column] of own.entries()) {
    const text = written[at] ?? '';
    if (text === '' && column.optional === true) continue;
    if (text === unknown && mayBeUnknown(column)) {
      open.push(column.title);
      continue;
    }
    if (text === '') return `lacks ${column.title}: write ${titles(columns)}`;
    const read = readCell(column, text);
    if (typeof read === 'object' && 'fault' in read) return `${column.title} ${read.fault}`;
    cells[column.key] = read;
  }
  if (hasRest && rest.length === 0 && !hasUnknown(line))
    return `lacks ${columns.at(-1)?.title}: write ${titles(columns)}`;
  return { cells, rest, open };
}

/** The row of a line in which nothing is wrong. */
export function rowOf(columns: readonly AskedColumn[], line: string): Row {
  const row = readRow(columns, line);
  if (typeof row === 'string') throw new Error(`A row that was found right can not be read: it ${row}.`);
  return row;
}

/** What parts the values of rows that are alike, with blanks round it or without: `Left door|Right door, cabin, left | right`. */
const bar = /\s*\|\s*/;

/**
 * The rows that one line tells: where a cell has several values with bars between them, each row takes its own, and a
 * cell with one value holds for all of them. Words that the names of all share stand behind the last. What is wrong with the
 * line as a text.
 */
export function rowsAlike(line: string): readonly string[] | string {
  if (!bar.test(line)) return [line];
  const cells: (readonly string[])[] = [];
  for (const cell of line.split(between)) {
    const values = wholeNames(cell.trim().split(bar));
    if (typeof values === 'string') return values;
    cells.push(values);
  }
  const count = Math.max(...cells.map(({ length }) => length));
  const odd = cells.find(({ length }) => length > 1 && length !== count);
  if (odd)
    return `has "${odd.join(' | ')}" where other cells have ${count} values: write ${count}, or one for all`;
  return Array.from({ length: count }, (_, at) => cells.map((cell) => cell[at] ?? cell[0] ?? '').join(', '));
}

function titles(columns: readonly AskedColumn[]): string {
  return columns.map(({ title }) => title).join(', ');
}

const words: Readonly<Record<string, boolean>> = { yes: true, no: false };

function readCell(column: AskedColumn, text: string): Cell | Fault {
  if (column.list !== true) return readWord(column, text);
  const read: Word[] = [];
  for (const word of text.split(/\s+/)) {
    const one = readWord(column, word);
    if (typeof one === 'object') return one;
    read.push(one);
  }
  return read;
}

interface Fault {
  readonly fault: string;
}

/** A text is a number or a yes where its field takes that and no text. */
function readWord(column: AskedColumn, text: string): Word | Fault {
  const { field } = column;
  const first = field.safeParse(text);
  if (first.success) return text;
  const form = shortFormOf(field);
  const other = form?.form === 'words' ? wordFor(form.words, text) : null;
  if (other !== null) return other;
  // A word of a closed set is written with blanks as well: engine bay.
  const hyphened = text.toLowerCase().replaceAll(/\s+/g, '-');
  if (choicesOf(column) !== null && field.safeParse(hyphened).success) return hyphened;
  const word = words[text.toLowerCase()];
  for (const other of [/^\d+(?:\.\d+)?$/.test(text) ? Number(text) : undefined, word])
    if (other !== undefined && field.safeParse(other).success) return other;
  if (withoutWrappers(field) instanceof z.ZodBoolean) return { fault: `can't be "${text}": write yes or no` };
  const [issue] = first.error.issues;
  return { fault: issue ? issueWords(issue, { value: text, schemas: [field] }) : 'can not be read' };
}
