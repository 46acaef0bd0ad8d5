import type { BuildPlan } from '../../../model/plan/index.ts';
import type { PlanNames } from '../../words/plan-names.ts';
import type { Writer } from '../../words/written.ts';
import { groupedTable, strong, type Table, tick } from '../table.ts';

/** Wires that part ways, each from its terminal; null where none does. */
export function partingsTable(
  { branches }: Pick<BuildPlan, 'branches'>,
  names: PlanNames,
  write: Writer,
): Table | null {
  if (branches.length === 0) return null;
  const groups = branches.map(({ terminal, partsAtM, legs, facing }) => ({
    title: `From ${names.terminal(terminal)}, parted after ${write.wire('measured', partsAtM).text} of the way: ${facing}`,
    things: legs,
  }));
  return groupedTable(
    'Wires that part ways, cut whole and tied up to there',
    groups,
    [
      { title: 'Label', cell: ({ label }) => strong(label) },
      { title: 'Together', kind: 'figure', cell: ({ sharedM }) => write.wire('measured', sharedM).text },
      { title: 'Leg of its own', kind: 'figure', cell: ({ ownM }) => write.wire('way', ownM).text },
      {
        title: 'Cut to',
        kind: 'figure',
        leads: true,
        cell: ({ sharedM, ownM }) => write.wire('wire', sharedM + ownM).text,
      },
      tick('Turned'),
      tick('Tied'),
    ],
    ({ wire }) => wire,
  );
}
