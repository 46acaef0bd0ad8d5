import type { BuildPlan, ConductorLimit, PlanConductor } from '../../model/plan/index.ts';
import { levelWords, spelled } from '../words.ts';
import { measure, none, plainNumber, writerFor } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { strong, type Table, tableOf } from './table.ts';

/** Every conductor of the feed: its size, and each limit that it was held against. */
export interface ConductorTableSheet {
  readonly conductors: Table;
  readonly limits: Table | null;
}

interface Limit extends ConductorLimit {
  readonly wire: string;
  readonly label: string;
}

type LabelOf = (wire: string) => string;

function conductorsTable(plan: BuildPlan, labelOf: LabelOf): Table {
  const write = writerFor(plan.shop);
  return tableOf(
    'Conductors of the feed',
    plan.power.conductors,
    [
      { title: 'Wire', cell: (one) => strong(labelOf(one.id), one.id) },
      { title: 'From, to', cell: (one) => ({ text: one.from, beside: `to ${one.to}` }) },
      { title: 'Size', cell: (one) => strong(one.size.label, `${plainNumber(one.size.areaMm2)} mm²`) },
      { title: 'Length', kind: 'figure', cell: (one) => write.wire(one.lengthM) },
      {
        title: 'Must carry',
        kind: 'figure',
        cell: (one) => (one.fed ? measure(one.neededA, 'A', 0) : 'not fed'),
      },
      { title: 'May carry', kind: 'figure', cell: (one) => carries(one) },
      { title: 'Fuses', cell: (one) => (one.fuses.length === 0 ? none : one.fuses.join(', ')) },
      { title: 'How', cell: (one) => ({ text: spelled(one.chosen), beside: one.reason }) },
    ],
    (one) => one.id,
  );
}

function carries(one: PlanConductor): { text: string; beside: string } {
  const kind = `${spelled(one.material).toLowerCase()}, ${measure(one.insulationC, '°C', 0)}`;
  const caution = one.cautionA < one.ampacityA ? `; ${measure(one.cautionA, 'A', 1)} with caution` : '';
  return { text: measure(one.ampacityA, 'A', 1), beside: `${kind}${caution}` };
}

function limitsTable(plan: BuildPlan, labelOf: LabelOf): Table | null {
  const limits: Limit[] = plan.power.conductors.flatMap((one) =>
    one.limits.map((limit) => ({ ...limit, wire: one.id, label: labelOf(one.id) })),
  );
  if (limits.length === 0) return null;
  return tableOf(
    'Limits that they were held against',
    limits,
    [
      { title: 'Wire', cell: (limit) => strong(limit.label) },
      { title: 'What', cell: (limit) => spelled(limit.what) },
      { title: 'Zone', cell: (limit) => (limit.zone === undefined ? none : spelled(limit.zone)) },
      { title: 'Value', kind: 'figure', cell: (limit) => `${plainNumber(limit.value)} ${limit.unit}` },
      { title: 'Limit', kind: 'figure', cell: (limit) => `${plainNumber(limit.limit)} ${limit.unit}` },
      { title: 'Past it', cell: (limit) => levelWords[limit.level] },
      { title: 'Source', cell: (limit) => limit.citation },
    ],
    (limit) => limit.wire,
  );
}

function conductorModel(plan: BuildPlan): ConductorTableSheet | null {
  if (plan.power.conductors.length === 0) return null;
  const labels = new Map(plan.wires.map((wire) => [wire.id, wire.label]));
  const labelOf: LabelOf = (wire) => labels.get(wire) ?? wire;
  return { conductors: conductorsTable(plan, labelOf), limits: limitsTable(plan, labelOf) };
}

export const conductorTable = builderSheet('conductor-table', 'Conductor table', conductorModel);
