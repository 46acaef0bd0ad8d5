import type { BuildPlan, PlanTurnOn } from '../../model/plan/index.ts';
import { measure, measureOr } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { strong, type Table, tableOf } from './table.ts';

/** The feed as a diagram, with what each device draws and what the alternator gives. */
export interface PowerDiagramSheet {
  readonly loads: Table | null;
  readonly charging: Table | null;
  readonly turnOn: Table | null;
}

function loadsTable(plan: BuildPlan): Table | null {
  if (plan.power.loads.length === 0) return null;
  const titles = new Map(plan.items.map((item) => [item.id, item.title]));
  return tableOf(
    'Current of each device',
    plan.power.loads,
    [
      { title: 'Device', cell: (load) => strong(titles.get(load.item) ?? load.item, load.item) },
      { title: 'Fuses of its maker', kind: 'figure', cell: (load) => measure(load.fuseA, 'A', 1) },
      { title: 'At rated power', kind: 'figure', cell: (load) => measure(load.ratedA, 'A', 1) },
      { title: 'With music', kind: 'figure', cell: (load) => measure(load.musicA, 'A', 1) },
      { title: 'Idle', kind: 'figure', cell: (load) => measure(load.idleA, 'A', 1) },
      { title: 'Rated power', kind: 'figure', cell: (load) => measure(load.powerW, 'W', 0) },
    ],
    (load) => load.item,
  );
}

function chargingTable(plan: BuildPlan): Table | null {
  if (plan.power.charging.length === 0) return null;
  return tableOf('Charging', plan.power.charging, [
    { title: 'Regime', cell: (regime) => strong(regime.name) },
    { title: 'Alternator gives', kind: 'figure', cell: (regime) => measure(regime.alternatorA, 'A', 0) },
    { title: 'Vehicle takes', kind: 'figure', cell: (regime) => measure(regime.vehicleA, 'A', 0) },
    { title: 'Audio, average', kind: 'figure', cell: (regime) => measure(regime.averageA, 'A', 1) },
    { title: 'Margin', kind: 'figure', cell: (regime) => measure(regime.marginA, 'A', 1) },
    { title: 'Reserve', kind: 'figure', cell: (regime) => measureOr(regime.reserveMinutes, 'min', 0) },
  ]);
}

function turnOnTable(plan: BuildPlan): Table | null {
  if (plan.power.turnOn.length === 0) return null;
  const loadText = ({ item, currentA }: PlanTurnOn['loads'][number]): string =>
    `${item} ${measureOr(currentA, 'A', 2)}`;
  return tableOf(
    'Turn-on',
    plan.power.turnOn,
    [
      { title: 'Output', cell: (one) => strong(one.source) },
      { title: 'Drives', cell: (one) => one.loads.map(loadText).join(', ') },
      { title: 'Sum', kind: 'figure', cell: (one) => measureOr(one.sumA, 'A', 2) },
      { title: 'Limit', kind: 'figure', cell: (one) => measureOr(one.limitA, 'A', 2) },
      {
        title: 'Within it',
        cell: (one) =>
          one.within === null ? 'not known' : { text: one.within ? 'yes' : 'NO', strong: !one.within },
      },
    ],
    (one) => one.source,
  );
}

function powerModel(plan: BuildPlan): PowerDiagramSheet | null {
  const hasFeed = plan.power.conductors.length + plan.power.loads.length > 0;
  return hasFeed
    ? { loads: loadsTable(plan), charging: chargingTable(plan), turnOn: turnOnTable(plan) }
    : null;
}

export const powerDiagram = builderSheet('power-diagram', 'Power diagram', powerModel, { cautions: [
  'battery',
  'voltage',
] });
