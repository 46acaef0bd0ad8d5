import type { BuildPlan, OperatingPoint } from '../../model/plan/index.ts';
import { ruleOf } from '../../model/plan/plan-rules.ts';
import { printed } from '../../model/printed/index.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import { namesOf, type PlanNames } from '../words/plan-names.ts';
import { faultSteps, jumpStart } from '../words/vehicle-card-words.ts';
import { spelled } from '../words/words.ts';
import { lengthOr, writerFor } from '../words/written.ts';
import { builderSheet } from './sheet.ts';
import { blank, type ColumnOf, dense, type Group, groupsBy, strong, type Table, tableOf } from './table.ts';

/** Two cards that live with the vehicle: one beside the battery, one for whoever looks for a fault. */
export interface VehicleCardsSheet {
  readonly job: string;
  readonly vehicle: string;
  readonly shop: string;
  readonly fuses: Table | null;
  readonly jumpStart: readonly string[];
  readonly points: Table | null;
  readonly against: string;
  readonly faultSteps: readonly string[];
}

/** The fuses that stand nearest to a source: those that make the whole feed dead. */
function mainFusesTable(plan: BuildPlan, names: PlanNames): Table | null {
  const mains = plan.power.fuses.filter(({ source }) => source !== null);
  if (mains.length === 0) return null;
  const write = writerFor(plan.shop);
  const places = new Map(plan.items.map((item) => [item.id, item.seatTitle ?? spelled(item.zone)]));
  return tableOf(
    'Fuses at the battery',
    mains,
    [
      { title: 'Fuse', cell: (fuse) => strong(names.item(fuse.item)) },
      {
        title: 'Rating',
        kind: 'figure',
        leads: true,
        cell: (fuse) => strong(printed('current-allowed', fuse.ratingA)),
      },
      { title: 'Form', cell: (fuse) => fuseForms[fuse.form].name },
      { title: 'Place', kind: 'words', cell: (fuse) => places.get(fuse.item) ?? '' },
      {
        title: 'Along the wire',
        kind: 'figure',
        cell: (fuse) => lengthOr(fuse.distanceM, (lengthM) => write.length('from-source', lengthM)).text,
      },
    ],
    (fuse) => fuse.id,
  );
}

/** Points of the network where a probe can be put, from the source on: terminals of devices, not joints inside wires. */
function testPoints(plan: BuildPlan, [first]: readonly OperatingPoint[]): string[] {
  const touched = new Set(
    plan.wires.filter(({ origin }) => origin === 'job').flatMap(({ from, to }) => [from, to]),
  );
  return (first?.nodes ?? []).map(({ id }) => id).filter((id) => touched.has(id));
}

/** Conditions that can be brought about beside the vehicle; of an older plan, which does not tell, all but one. */
function conditions(plan: BuildPlan): OperatingPoint[] {
  const fed = plan.power.points.filter(({ state }) => state !== 'no-solution');
  const held = fed.filter(({ reach }) => reach !== undefined);
  return held.length > 0 ? held : fed.filter(({ name }) => name !== 'full-rating');
}

/** The item of a terminal, and its name on that item. */
function endOf(id: string): readonly [item: string, terminal: string] {
  const [item = id, ...terminal] = id.split('.');
  return [item, terminal.join('.')];
}

/** Ports of one bar or strip with no fuse in it are one point, told once, where the same is foretold of all. */
function probes(plan: BuildPlan, ids: readonly string[], volts: (id: string) => string): Group<string>[] {
  const fused = new Set(plan.power.fuses.map(({ item }) => item));
  const bars = new Set(
    plan.items.flatMap(({ id, kind }) => (kind === 'distribution' && !fused.has(id) ? [id] : [])),
  );
  return groupsBy(ids, (id) => {
    const [item] = endOf(id);
    return bars.has(item) ? `${item} ${volts(id)}` : id;
  });
}

function pointsTable(plan: BuildPlan, names: PlanNames): Table | null {
  const points = conditions(plan);
  const ids = testPoints(plan, points);
  if (ids.length === 0) return null;
  const voltsAt = points.map((point) => {
    const volts = new Map(point.nodes.map(({ id, voltageV }) => [id, voltageV]));
    return { title: point.title, at: (id: string) => printed('voltage', volts.get(id)) };
  });
  const all = probes(plan, ids, (id) => voltsAt.map(({ at }) => at(id)).join(' '));
  const probed = all.map(({ things }) => ({ ids: things, id: things[0] ?? '' }));
  const columns = voltsAt.map(
    ({ title, at }): ColumnOf<{ id: string }> => ({ title, kind: 'figure', cell: ({ id }) => at(id) }),
  );
  return tableOf(
    'Volts at the test points, from the battery on',
    probed,
    [
      {
        title: 'Probe at',
        kind: 'words',
        cell: ({ ids: [first = '', ...more] }) => {
          const others = more.map((id) => `, ${names.terminal(id).slice(endOf(id)[0].length + 1)}`).join('');
          return strong(`${names.terminal(first)}${others}`, names.item(endOf(first)[0]));
        },
      },
      ...columns,
      blank('Read'),
    ],
    ({ id }) => id,
  );
}

function cardsModel(plan: BuildPlan): VehicleCardsSheet | null {
  const names = namesOf(plan);
  const fuses = mainFusesTable(plan, names);
  const points = pointsTable(plan, names);
  if (fuses === null && points === null) return null;
  const total = plan.power.loads.reduce((sum, { ratedA }) => sum + ratedA, 0);
  return {
    job: `${plan.job.title} (${plan.job.id}, revision ${plan.job.revision})`,
    vehicle: plan.vehicle.title,
    shop: [plan.shop.name, ...plan.shop.address].join(', '),
    fuses: fuses && dense(fuses),
    jumpStart: jumpStart(ruleOf(plan, 'voltage-variable-high'), fuses !== null),
    points: points && dense(points),
    against: `Negative probe on ${plan.power.points[0]?.referenceNode ?? 'the battery'}. All devices together draw ${printed('current-carried', total)} at rated power and the voltage that sizes are reckoned at; the fuse table tells the greatest that a fuse carries, at the voltages that its devices get.`,
    faultSteps: faultSteps(plan),
  };
}

export const vehicleCards = builderSheet(
  'vehicle-cards',
  'Battery-side card and fault-finding card',
  cardsModel,
  { cautions: ['restraints'] },
);
