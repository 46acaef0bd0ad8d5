import type { BuildPlan, NetworkElement } from '../../model/plan/index.ts';
import { namesOf } from '../plan-names.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';
import { measureOr } from '../written.ts';

const kindWords = {
  source: 'Source',
  conductor: 'Conductor',
  fuse: 'Fuse',
  joint: 'Joint',
  load: 'Device',
} as const satisfies Record<NetworkElement['kind'], string>;

/** Current, drop and heat in every element of the network, a table an operating point. */
export function networkTables(plan: BuildPlan): Table[] {
  const { thing } = namesOf(plan);
  return plan.power.points.map((point) =>
    tableOf(
      `Every element of the network: ${point.title}`,
      point.elements,
      [
        { title: 'Element', cell: (one) => strong(thing(one.of), one.id) },
        { title: 'Kind', cell: (one) => kindWords[one.kind] },
        { title: 'Current', kind: 'figure', cell: (one) => measureOr(absolute(one.currentA), 'A', 1) },
        { title: 'Volts across it', kind: 'figure', cell: (one) => measureOr(absolute(one.dropV), 'V', 3) },
        { title: 'Heat', kind: 'figure', cell: (one) => measureOr(one.heatW, 'W', 2) },
      ],
      (one) => one.of,
    ),
  );
}

function absolute(value: number | undefined): number | undefined {
  return value === undefined ? undefined : Math.abs(value);
}
