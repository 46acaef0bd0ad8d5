import {
  type CellDifference,
  countedStates,
  type RowDifference,
  type RowState,
  type TableDifference,
} from '../../compare/compare-plans.ts';
import type { Cell as ComparedCell } from '../../compare/table.ts';
import { stateLetters } from '../../draw/overlay/board-overlay.ts';
import { noFigure } from '../../model/printed/index.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';

/** The order in which states are counted. */
const stateOrder: readonly RowState[] = ['gone', 'new', 'moved', 'changed'];

/** `2 gone, 1 new`; a state that nothing is in is left out, and without any nothing differs. */
export function stateCounts(counts: Readonly<Record<RowState, number>>): string {
  const said = stateOrder.flatMap((state) => (counts[state] > 0 ? [`${counts[state]} ${state}`] : []));
  return said.length === 0 ? 'nothing differs' : said.join(', ');
}

/** How one value of a thing differs, or all of a thing that only one side has. */
export interface DifferenceLine {
  readonly row: RowDifference;
  readonly what: string;
  readonly was: string;
  readonly is: string;
}

/** A compared table as pages print it: what became of a thing in its letter and its word, then what was and what is. */
export function differenceTable(table: TableDifference): Table {
  return tableOf(
    `${table.title}: ${stateCounts(countedStates([table]))}`,
    differenceLines(table),
    [
      { title: 'Thing', cell: ({ row }) => strong(row.name) },
      { title: 'Became', leads: true, cell: ({ row }) => `${stateLetters[row.state]} ${row.state}` },
      { title: 'What', cell: ({ what }) => what },
      { title: 'Before', kind: 'words', cell: ({ was }) => was },
      { title: 'Now', kind: 'words', cell: ({ is }) => is },
    ],
    ({ row }) => row.key,
  );
}

/** A line for each value of a table that differs, and one for each thing that only one side has. */
export function differenceLines({ rows }: TableDifference): DifferenceLine[] {
  return rows.flatMap(linesOf);
}

function linesOf(row: RowDifference): DifferenceLine[] {
  const all = (side: 'was' | 'is'): string =>
    row.cells
      .flatMap((cell) => {
        const text = cell[side]?.text ?? noFigure;
        return text === noFigure ? [] : [`${cell.title}: ${text}`];
      })
      .join('; ') || noFigure;
  if (row.state === 'gone') return [{ row, what: 'all of it', was: all('was'), is: noFigure }];
  if (row.state === 'new') return [{ row, what: 'all of it', was: noFigure, is: all('is') }];
  return row.cells.map((cell) => ({ row, what: cell.title, ...sidesOf(cell) }));
}

/** What was and what is; where both print alike, that they are not the same. */
function sidesOf({ was, is }: CellDifference): Pick<DifferenceLine, 'was' | 'is'> {
  const text = (cell: ComparedCell | null): string => cell?.text ?? noFigure;
  return text(was) === text(is)
    ? { was: text(was), is: `${text(is)}, not the same ones` }
    : { was: text(was), is: text(is) };
}
