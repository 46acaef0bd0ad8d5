import type { BuildPlan, PlanRun } from '../../../model/plan/index.ts';
import type { Writer } from '../../words/written.ts';
import { blank, groupedTable, strong, type Table, tick } from '../table.ts';
import { longestFirst, type Piece } from './piece.ts';

function runTitle(run: PlanRun, write: Writer): string {
  return `${run.title} (${run.side}): way ${write.wire('way', run.lengthM).text}, bundle ${write.length('size', run.bundleM).text}`;
}

/** What is pulled through the vehicle, way by way, the longest first; null where nothing is. */
export function pullsTable(plan: BuildPlan, pieces: readonly Piece[], write: Writer): Table | null {
  const groups = plan.runs
    .map((run) => ({
      title: runTitle(run, write),
      things: longestFirst(pieces.filter((piece) => piece.run === run.id)),
    }))
    .filter(({ things }) => things.length > 0);
  if (groups.length === 0) return null;
  return groupedTable(
    'Pull, way by way, the longest first',
    groups,
    [
      { title: 'Label', cell: (piece) => strong(piece.label) },
      { title: 'What', cell: ({ what }) => what },
      {
        title: 'Length',
        kind: 'figure',
        leads: true,
        cell: ({ lengthM }) => write.wire('wire', lengthM).text,
      },
      { title: 'From', cell: ({ ends }) => ends[0] },
      { title: 'To', cell: ({ ends }) => ends[1] ?? '' },
      tick('Pulled'),
      tick('Tied'),
      blank('Left over'),
    ],
    ({ subject }) => subject,
  );
}
