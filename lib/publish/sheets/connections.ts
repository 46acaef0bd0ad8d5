import type { BuildPlan, PlanWire } from '../../model/plan/index.ts';
import { namesOf, type PlanNames } from '../words/plan-names.ts';
import { counted, spelledWithin } from '../words/words.ts';
import { none, type Writer, writerFor } from '../words/written.ts';
import { builderSheet } from './sheet.ts';
import { dense, type Group, groupedTable, strong, type Table, tableOf, tick } from './table.ts';

/** Connection table after IEC 61082-1: every conductor from end to end, cable by cable. */
export interface ConnectionsSheet {
  readonly connections: Table;
  readonly spares: Table | null;
}

interface Spare {
  readonly cable: string;
  readonly conductor: string;
  readonly colour: string;
}

function groupsOf(plan: BuildPlan, names: PlanNames, write: Writer): Group<PlanWire>[] {
  const cables = plan.cables.map((cable) => {
    const things = plan.wires.filter((wire) => wire.cable === cable.id);
    const length = write.wire('wire', cable.lengthM).text;
    return { title: `Cable ${cable.id}: ${names.part(cable.part)}, ${length}`, things };
  });
  const single = plan.wires.filter((wire) => wire.cable === undefined && wire.origin === 'job');
  const fitted = plan.wires.filter((wire) => wire.origin === 'vehicle');
  return [
    ...cables,
    { title: 'Wires that lie by themselves', things: single },
    { title: 'Conductors that the vehicle came with', things: fitted },
  ].filter(({ things }) => things.length > 0);
}

function connectionsTable(plan: BuildPlan): Table {
  const names = namesOf(plan);
  const groups = groupsOf(plan, names, writerFor(plan.shop));
  return groupedTable(
    'Connections',
    groups,
    [
      { title: 'Wire', cell: (wire) => (wire.label === '' ? none : strong(names.wire(wire.id))) },
      { title: 'Carries', cell: (wire) => spelledWithin(wire.role) },
      {
        title: 'Conductor',
        cell: (wire) => ({ text: wire.colour ?? 'any', beside: wire.conductor ?? wire.size.label }),
      },
      { title: 'From (A)', cell: (wire) => names.terminal(wire.from) },
      { title: 'To (B)', cell: (wire) => names.terminal(wire.to) },
      tick('A'),
      tick('B'),
    ],
    (wire) => wire.id,
  );
}

function sparesTable(plan: BuildPlan): Table | null {
  const spares: Spare[] = plan.cables.flatMap(({ id, conductors }) =>
    conductors
      .filter(({ wire }) => wire === null)
      .map(({ name, colour }) => ({ cable: id, conductor: name, colour })),
  );
  if (spares.length === 0) return null;
  return tableOf(`${counted(spares.length, 'spare conductor')}: cut back and sealed at both ends`, spares, [
    { title: 'Cable', cell: (spare) => strong(spare.cable) },
    { title: 'Conductor', cell: (spare) => spare.conductor },
    { title: 'Colour', cell: (spare) => spare.colour },
    tick('A'),
    tick('B'),
  ]);
}

function connectionsModel(plan: BuildPlan): ConnectionsSheet | null {
  if (plan.wires.length === 0) return null;
  const spares = sparesTable(plan);
  return { connections: dense(connectionsTable(plan)), spares: spares && dense(spares) };
}

export const connections = builderSheet('connections', 'Connection table', connectionsModel);
