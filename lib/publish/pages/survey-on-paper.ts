import type { AskedColumn, AskedTable, Tool } from '../../model/survey/asked-table.ts';
import type { Station } from '../../model/survey/station.ts';
import { walk } from '../../model/survey/walk.ts';
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

const tools: Readonly<Record<Tool, string>> = {
  eye: 'eye',
  tape: 'tape',
  meter: 'meter',
  leaflet: 'leaflet',
};

/** Single values of a stop stand together in one table, each other thing in one of its own. */
function tablesOnPaper({ tables }: Station): readonly AskedOnPaper[] {
  return runsOf(tables).map((run) => {
    const [first] = run;
    const isSingle = first !== undefined && isSingleValue(first);
    return {
      hint: isSingle ? null : (first?.hint ?? null),
      table: dense(isSingle ? singles(run) : many(run)),
    };
  });
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
      { title: 'By', cell: ({ by }) => tools[by] },
      { title: 'Such as', cell: ({ columns: [only] }) => only?.example ?? '' },
      { title: 'Read', kind: 'room' },
    ],
  );
}

/** What paper tells of a column. */
type Told = Pick<AskedColumn, 'title' | 'example'>;

/** A row of more than these is written down the page: paper is no wider. */
const mostAcross = 8;

function many([table]: readonly AskedTable[]): Table {
  if (!table) throw new Error('A run of tables has at least one.');
  const caption = `${table.asks} (${tools[table.by]})`;
  const columns = columnsOf(table);
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

function downThePage(caption: string, count: number, columns: readonly Told[]): Table {
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

/** What belongs to a space tells to which. */
function columnsOf(table: AskedTable): readonly Told[] {
  return table.within === 'space'
    ? [{ title: 'space', example: 'under-left-seat' }, ...table.columns]
    : table.columns;
}
