import type { BuildPlan, OperatingPoint } from '../../model/plan/index.ts';
import { faultSteps, jumpStart } from '../hand-over-words.ts';
import { namesOf, type PlanNames } from '../plan-names.ts';
import { spelled } from '../words.ts';
import { lengthOr, measure, measureOr, writerFor } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { blank, type ColumnOf, dense, strong, type Table, tableOf } from './table.ts';

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
      { title: 'Rating', kind: 'figure', cell: (fuse) => strong(measureOr(fuse.ratingA, 'A', 0)) },
      { title: 'Form', cell: (fuse) => spelled(fuse.form) },
      { title: 'Place', kind: 'words', cell: (fuse) => places.get(fuse.item) ?? '' },
      {
        title: 'Along the wire',
        kind: 'figure',
        cell: (fuse) => lengthOr(fuse.distanceM, write.length).text,
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

/** Conditions that can be brought about beside the vehicle. */
function conditions(plan: BuildPlan): OperatingPoint[] {
  return plan.power.points.filter(({ name, state }) => state !== 'no-solution' && name !== 'full-rating');
}

function pointsTable(plan: BuildPlan, names: PlanNames): Table | null {
  const points = conditions(plan);
  const ids = testPoints(plan, points);
  if (ids.length === 0) return null;
  const columns = points.map((point): ColumnOf<string> => {
    const volts = new Map(point.nodes.map(({ id, voltageV }) => [id, voltageV]));
    return { title: point.title, kind: 'figure', cell: (id) => measureOr(volts.get(id), 'V', 2) };
  });
  return tableOf(
    'Volts at the test points, from the battery on',
    ids,
    [
      { title: 'Probe at', kind: 'words', cell: (id) => strong(id, names.item(id.split('.')[0] ?? id)) },
      ...columns,
      blank('Read'),
    ],
    (id) => id,
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
    jumpStart,
    points: points && dense(points),
    against: `Negative probe on ${plan.power.points[0]?.referenceNode ?? 'the battery'}. All devices together draw ${measure(total, 'A', 0)} at rated power.`,
    faultSteps: faultSteps(plan),
  };
}

export const vehicleCards = builderSheet(
  'vehicle-cards',
  'Battery-side card and fault-finding card',
  cardsModel,
  { cautions: ['restraints'] },
);
