import { type AskedColumn, type AskedTable, columnsAmongSpaces } from '../../../model/survey/asked-table.ts';
import { walk } from '../../../model/survey/order-of-questions.ts';
import { type Answers, linesOf } from '../ask/question.ts';
import { type Row, rowOf } from '../ask/rows.ts';

const tables: ReadonlyMap<string, AskedTable> = new Map(
  walk.flatMap((station) => station.tables.map((table) => [table.key, table] as const)),
);

/** A row, with the space that it belongs to. */
export interface PlacedRow extends Row {
  readonly space: string | null;
}

/** Ids of the spaces that were answered. */
export function spaceIds(answers: Answers): readonly string[] {
  return rowsOf(answers, 'space').map(({ cells }) => String(cells.name));
}

/** The columns of a table beside these answers. */
export function columnsOf(table: AskedTable, answers: Answers): readonly AskedColumn[] {
  return linesOf(answers, 'space').length > 1 ? columnsAmongSpaces(table) : table.columns;
}

/** The rows of a table, as they were answered. */
export function rowsOf(answers: Answers, key: string): readonly PlacedRow[] {
  const table = tables.get(key);
  if (!table) throw new Error(`The walk has no table ${key}.`);
  const only = table.within === 'space' ? spaceIds(answers) : [];
  return linesOf(answers, key).map((line) => {
    const row = rowOf(columnsOf(table, answers), line);
    const { space, ...cells } = row.cells;
    return { ...row, cells, space: typeof space === 'string' ? space : (only[0] ?? null) };
  });
}
