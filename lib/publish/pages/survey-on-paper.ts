import { type AskedColumn, type AskedTable, columnsAmongSpaces } from '../../model/survey/asked-table.ts';
import { walk } from '../../model/survey/order-of-questions.ts';
import type { Station } from '../../model/survey/station.ts';
import { dense, groupedTable, type Table } from '../sheets/table.ts';

/** One table of the blank survey, with how it is meant. */
export interface AskedOnPaper {
  readonly hint: string | null;
  readonly table: Table;
}

/** One stop of the walk, on paper. */
export interface StationOnPaper {
  readonly id: string;
  readonly title: string;
  readonly tables: readonly AskedOnPaper[];
}

/** The walk round a vehicle with nothing filled in: its tables in the order in which `rackleaf new vehicle` asks. */
export function blankSurvey(): readonly StationOnPaper[] {
  return walk.map((station) => ({ id: station.id, title: station.title, tables: tablesOnPaper(station) }));
}

/** Single values of a stop stand together in one table, each other thing in one of its own. */
function tablesOnPaper({ tables }: Station): readonly AskedOnPaper[] {
  return runsOf(tables).flatMap((run): readonly AskedOnPaper[] =>
    run.every(isSingleValue)
      ? [{ hint: null, table: dense(singles(run)) }]
      : run.map((table) => ({ hint: table.hint ?? null, table: dense(many(table)) })),
  );
}

/** Neighbours that are single values together, all else alone. */
function runsOf(tables: readonly AskedTable[]): readonly (readonly AskedTable[])[] {
  const runs: AskedTable[][] = [];
  for (const table of tables) {
    const last = runs.at(-1);
    if (last?.every(isSingleValue) && isSingleValue(table)) last.push(table);
    else runs.push([table]);
  }
  return runs;
}

function isSingleValue({ rows, columns }: AskedTable): boolean {
  return rows === 1 && columns.length === 1;
}

function singles(tables: readonly AskedTable[]): Table {
  return groupedTable(
    'One value each',
    [{ title: null, things: tables }],
    [
      { title: 'What', kind: 'words', cell: ({ asks }) => asks },
      { title: 'By', cell: ({ by }) => by },
      { title: 'Such as', cell: ({ columns: [only] }) => only?.example ?? '' },
      { title: 'Read', kind: 'room' },
    ],
  );
}

/** A row of more than these is written down the page: paper is no wider. */
const mostAcross = 8;

function many(table: AskedTable): Table {
  const caption = `${table.asks} (${table.by})`;
  const columns = columnsAmongSpaces(table);
  if (columns.length > mostAcross) return downThePage(caption, table.rows, columns);
  const example = [true];
  const rows = Array.from({ length: table.rows }, () => false);
  return groupedTable(
    caption,
    [
      { title: 'Such as', things: example },
      { title: 'In this vehicle', things: rows },
    ],
    columns.map((one) => ({
      title: one.title,
      kind: 'room' as const,
      cell: (isExample: boolean) => (isExample ? one.example : ''),
    })),
  );
}

function downThePage(caption: string, count: number, columns: readonly AskedColumn[]): Table {
  return groupedTable(
    caption,
    [{ title: null, things: columns }],
    [
      { title: 'What', kind: 'words', cell: ({ title }) => title },
      { title: 'Such as', cell: ({ example }) => example },
      ...Array.from({ length: count }, (_, at) => ({ title: `No. ${at + 1}`, kind: 'room' as const })),
    ],
  );
}
