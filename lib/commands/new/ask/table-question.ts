import type { AskedColumn, AskedTable, Tool } from '../../../model/survey/asked-table.ts';
import { expectation } from '../../../read/schema/expectation.ts';
import { choicesOf } from './choices.ts';
import type { Answers, Choice, Question } from './question.ts';
import { between, mayBeUnknown, type Row, readRow, rowsAlike } from './rows.ts';
import { writtenRight } from './written-right.ts';

/** What a table is asked with beside what it says itself. */
export interface Beside {
  /** Why it is not asked, as the end of a sentence about it; null where it is. */
  readonly needless?: (answers: Answers) => string | null;
  /** The columns where other answers add to them. */
  readonly columns?: (answers: Answers) => readonly AskedColumn[];
  /** What there is to choose from. */
  readonly hints?: (answers: Answers) => readonly string[];
  readonly fallback?: (answers: Answers) => string | null;
  /** The answer that follows, and is not asked for. */
  readonly follows?: (answers: Answers) => string | null;
  /** Left out, a table of one row and one closed column is chosen from. */
  readonly choices?: (answers: Answers) => readonly Choice[];
  /** How many rows make a list whole; left out, an empty line ends it. */
  readonly whole?: (answers: Answers) => number;
  /** The rows that a row stands for, as a text what is wrong with it: a range of channels with a name for each. */
  readonly spread?: (line: string) => readonly string[] | string;
  /** What a row is of; left out, its first cell, or its first two where it leads from one to the other. */
  readonly thing?: (row: string) => string;
  /** What is wrong with a row whose cells are right one by one. Of those before it the answers tell. */
  readonly fault?: (row: Row, answers: Answers, line: string) => string | null;
  /** What is doubtful about a row that can be written all the same. */
  readonly doubt?: (row: Row, answers: Answers) => string | null;
}

const tools: Readonly<Record<Tool, string>> = {
  eye: 'look',
  tape: 'tape',
  meter: 'meter',
  leaflet: 'leaflet',
};

/** The question of a table: a row is a line with commas. */
export function tableQuestion(table: AskedTable, beside: Beside = {}): Question {
  const columnsOf = (answers: Answers) => beside.columns?.(answers) ?? table.columns;
  const many = table.rows > 1;
  const isOptional = many || table.columns.every(({ optional }) => optional === true);
  const [only] = table.columns;
  const closed = !many && table.columns.length === 1 && only ? choicesOf(only) : null;
  const choices = beside.choices ?? (closed && (() => closed));
  return {
    key: table.key,
    asks: `${table.asks} (${tools[table.by]})`,
    many,
    hints: (answers) => [
      ...tableHints(table, columnsOf(answers)),
      ...(beside.hints?.(answers) ?? []),
      ...(many ? [several(columnsOf(answers))] : []),
    ],
    ...(many && { thing: beside.thing ?? ((row) => thingOf(table, row)) }),
    ...(many && beside.whole && { whole: beside.whole }),
    ...(many &&
      table.columns.length > 1 && {
        rows: (line) => spreadRows(line, beside.spread),
        meant: (line, isRight) => writtenRight(line, { isRight, isNamed: only?.key === 'name' }),
      }),
    ...(table.columns.every(mayBeUnknown) && { mayBeUnknown: true }),
    ...(beside.needless && { needless: beside.needless }),
    ...(table.seldom !== undefined && { seldom: table.seldom }),
    ...(choices && { choices }),
    ...(beside.follows && { follows: beside.follows }),
    ...((isOptional || beside.fallback) && { fallback: beside.fallback ?? (() => '') }),
    fault: (answer, answers) => {
      const row = readRow(columnsOf(answers), answer);
      return typeof row === 'string' ? row : (beside.fault?.(row, answers, answer) ?? null);
    },
    doubt: (answer, answers) => {
      const row = readRow(columnsOf(answers), answer);
      return typeof row === 'string' ? null : (beside.doubt?.(row, answers) ?? null);
    },
  };
}

function thingOf({ columns }: AskedTable, row: string): string {
  const [first] = columns;
  if (columns.length === 1) return row.trim();
  const cells = row.split(between).map((cell) => cell.trim());
  return cells.slice(0, first?.key === 'from' ? 2 : 1).join(', ');
}

/** The rows of a line: of several that are alike each, and what each of them stands for. */
function spreadRows(line: string, spread: Beside['spread']): readonly string[] | string {
  const alike = rowsAlike(line);
  if (typeof alike === 'string' || !spread) return alike;
  const rows: string[] = [];
  for (const row of alike) {
    const found = spread(row);
    if (typeof found === 'string') return found;
    rows.push(...found);
  }
  return rows;
}

function several(columns: readonly AskedColumn[]): string {
  const alike =
    columns.length === 1
      ? ''
      : ' Several alike go in one line, with | between what differs: left|right, Left|Right front door.';
  return `One a line; an empty line ends, and so does , end behind the last one.${alike}`;
}

/** How a row of a table is written: what is said of the table, its columns, an example, the words that closed ones take. */
export function tableHints({ hint, seldom }: AskedTable, columns: readonly AskedColumn[]): string[] {
  return [
    ...(hint === undefined ? [] : [hint]),
    ...(seldom === undefined ? [] : [`Left empty, it holds: ${seldom}.`]),
    ...rowHints(columns),
  ];
}

function rowHints(columns: readonly AskedColumn[]): string[] {
  const [first] = columns;
  if (columns.length === 1 && first) return [`Such as: ${first.example}`];
  const optional = columns.filter((one) => one.optional === true).map(({ title }) => title);
  return [
    `${columns.map(({ title }) => title).join(', ')}`,
    `Such as: ${columns.map(({ example }) => example).join(', ')}`,
    ...columns.flatMap((one) =>
      choicesOf(one) === null ? [] : [`${one.title}: ${expectation([one.field])}`],
    ),
    ...(optional.length === 0 ? [] : [`May be left empty: ${optional.join(', ')}`]),
  ];
}
