import type { BuildPlan } from '../model/plan/index.ts';
import type { Cell, CompareLook, PlanTable, ReadRow } from './table.ts';
import { boardsTable, fixingsTable, placesTable } from './tables/boards.ts';
import { jobTable, partsTable } from './tables/equipment.ts';
import { findingsTable, pickTable, rulesTable } from './tables/judged.ts';
import { channelsTable, settingsTable, speakersTable } from './tables/sound.ts';
import { conductorsTable, fusesTable, loadsTable } from './tables/supply.ts';

/** Every table that two plans are compared by, what hurts most if it is missed first. */
export const comparedTables: readonly PlanTable[] = [
  fusesTable,
  conductorsTable,
  partsTable,
  placesTable,
  boardsTable,
  fixingsTable,
  settingsTable,
  channelsTable,
  speakersTable,
  loadsTable,
  findingsTable,
  pickTable,
  rulesTable,
  jobTable,
];

/** What became of a row: only the one before has it, only the other, or both and it differs. */
export type RowState = 'gone' | 'new' | 'changed' | 'moved';

/** One value that differs; null on the side that has no such row. */
export interface CellDifference {
  readonly column: string;
  readonly title: string;
  readonly was: Cell | null;
  readonly is: Cell | null;
}

/** One thing that differs. */
export interface RowDifference {
  readonly key: string;
  /** What a reader calls it: as it is, or as it was where it is gone. */
  readonly name: string;
  readonly state: RowState;
  /** Of a row that both have, what differs; else all that is known of it. */
  readonly cells: readonly CellDifference[];
}

/** One table, compared. */
export interface TableDifference {
  readonly id: string;
  readonly title: string;
  /** False where one of the plans was frozen before it was kept. */
  readonly isKept: boolean;
  /** By key, in the order of its letters. */
  readonly rows: readonly RowDifference[];
  /** How many rows are the same in both. */
  readonly same: number;
}

/**
 * Where one plan differs from another, table by table, for a reader. Things are the same where the job calls them the
 * same: an amplifier with another name is gone under the one and new under the other. What both print alike is no
 * difference.
 */
export function comparePlans(before: BuildPlan, after: BuildPlan, look: CompareLook): TableDifference[] {
  return comparedTables.flatMap((table): TableDifference[] => {
    const columns = table.columns(look.audience);
    if (columns.length === 0) return [];
    const { id, title } = table;
    const [was, is] = [table.read(before, look), table.read(after, look)];
    if (was === null || is === null) return [{ id, title, isKept: false, rows: [], same: 0 }];
    const keys = [...new Set([...was.keys(), ...is.keys()])].toSorted();
    const rows = keys.flatMap((key) => rowDifference(table, columns, key, was.get(key), is.get(key)));
    return [{ id, title, isKept: true, rows, same: keys.length - rows.length }];
  });
}

type Columns = ReturnType<PlanTable['columns']>;

function rowDifference(
  { differs }: PlanTable,
  columns: Columns,
  key: string,
  was: ReadRow | undefined,
  is: ReadRow | undefined,
): RowDifference[] {
  const cells = columns.flatMap(({ id, title }): CellDifference[] => {
    const [before, after] = [was?.cells.get(id) ?? null, is?.cells.get(id) ?? null];
    const isSame = before !== null && after !== null && sameCell(before, after);
    return isSame ? [] : [{ column: id, title, was: before, is: after }];
  });
  const state = was === undefined ? 'new' : is === undefined ? 'gone' : differs;
  const name = is?.name ?? was?.name ?? key;
  return cells.length === 0 ? [] : [{ key, name, state, cells }];
}

function sameCell(a: Cell, b: Cell): boolean {
  return a.text === b.text && (a.exact ?? a.text) === (b.exact ?? b.text);
}

/** How many rows there are of each state. */
export function countedStates(tables: readonly TableDifference[]): Readonly<Record<RowState, number>> {
  const counts = { gone: 0, new: 0, changed: 0, moved: 0 };
  for (const { rows } of tables) for (const { state } of rows) counts[state] += 1;
  return counts;
}
