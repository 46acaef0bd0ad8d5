import type { BuildPlan } from '../../../model/plan/index.ts';
import type { PlanNames } from '../../words/plan-names.ts';
import { none, type Writer } from '../../words/written.ts';
import { strong, type Table, tableOf, tick } from '../table.ts';

/** Wires that are joined to others before a port; null where none is. */
export function jointsTable(
  { joints = [] }: Pick<BuildPlan, 'joints'>,
  names: PlanNames,
  write: Writer,
): Table | null {
  if (joints.length === 0) return null;
  const isOnWay = joints.some(({ at }) => at !== undefined);
  return tableOf(
    isOnWay
      ? 'Wires that are joined to others before a port or on their way'
      : 'Wires that are joined to others before a port',
    joints,
    [
      { title: 'Label', cell: ({ label }) => strong(label) },
      { title: 'Joined to', cell: ({ trunkLabel }) => strong(trunkLabel) },
      { title: 'Before', leads: true, cell: ({ terminal }) => names.terminal(terminal) },
      {
        title: 'From the port',
        kind: 'figure',
        cell: ({ distanceM }) => write.wire('measured', distanceM).text,
      },
      ...(isOnWay ? [{ title: 'At', cell: ({ at }: (typeof joints)[number]) => at ?? 'the port' }] : []),
      { title: 'By', cell: ({ part }) => (part === null ? none.text : names.part(part)) },
      tick('Joined'),
      tick('Pull-test'),
    ],
    ({ id }) => id,
  );
}
