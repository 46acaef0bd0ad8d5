import type { AskedColumn } from '../../../model/survey/asked-table.ts';
import { issueWords } from '../../../read/schema/issue-words.ts';

/** What stands in a cell, as a file has it. */
export type Cell = string | number | boolean | string[];

/** A row by its columns; what was left empty is missing. */
export interface Row {
  readonly cells: Readonly<Record<string, Cell>>;
  /** What follows, where the last column takes whatever follows. */
  readonly rest: readonly string[];
}

/** Parts cells, but not the two halves of a number with a decimal comma: the reader tells how that is written. */
const between = /(?<!\d),|,(?!\d)/;

/** Reads a line with a comma between its cells; what is wrong with it as a text. */
export function readRow(columns: readonly AskedColumn[], line: string): Row | string {
  const written = columns.length === 1 ? [line.trim()] : line.split(between).map((cell) => cell.trim());
  const hasRest = columns.at(-1)?.rest === true;
  const own = hasRest ? columns.slice(0, -1) : columns;
  const rest = written.slice(own.length).filter((cell) => cell !== '');
  if (!hasRest && rest.length > 0)
    return `has ${written.length} values, and ${own.length} are asked for: ${titles(columns)}`;
  const cells: Record<string, Cell> = {};
  for (const [at, column] of own.entries()) {
    const text = written[at] ?? '';
    if (text === '' && column.optional === true) continue;
    if (text === '') return `lacks ${column.title}: write ${titles(columns)}`;
    const read = readCell(column, text);
    if (typeof read === 'object' && 'fault' in read) return `${column.title} ${read.fault}`;
    cells[column.key] = read;
  }
  if (hasRest && rest.length === 0) return `lacks ${columns.at(-1)?.title}: write ${titles(columns)}`;
  return { cells, rest };
}

/** The row of a line in which nothing is wrong. */
export function rowOf(columns: readonly AskedColumn[], line: string): Row {
  const row = readRow(columns, line);
  if (typeof row === 'string') throw new Error(`A row that was found right can not be read: it ${row}.`);
  return row;
}

function titles(columns: readonly AskedColumn[]): string {
  return columns.map(({ title }) => title).join(', ');
}

const words: Readonly<Record<string, boolean>> = { yes: true, no: false };

function readCell(column: AskedColumn, text: string): Cell | Fault {
  if (column.list !== true) return readWord(column, text);
  const words = text.split(/\s+/);
  const read = words.map((word) => readWord(column, word));
  return read.find((one) => typeof one === 'object' && 'fault' in one) ?? words;
}

interface Fault {
  readonly fault: string;
}

/** A text is a number or a yes where its field takes that and no text. */
function readWord({ field }: AskedColumn, text: string): string | number | boolean | Fault {
  const first = field.safeParse(text);
  if (first.success) return text;
  const word = words[text.toLowerCase()];
  for (const other of [/^\d+(?:\.\d+)?$/.test(text) ? Number(text) : undefined, word])
    if (other !== undefined && field.safeParse(other).success) return other;
  const isYesOrNo = field.safeParse(true).success;
  if (isYesOrNo) return { fault: `can't be "${text}": write yes or no` };
  const [issue] = first.error.issues;
  return { fault: issue ? issueWords(issue, { value: text, schemas: [field] }) : 'can not be read' };
}
