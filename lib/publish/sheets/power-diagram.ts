import type { BuildPlan, PlanTurnOn } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { bladeColour, fuseForms } from '../../model/tables/fuse-forms.ts';
import { namesOf, type PlanNames } from '../words/plan-names.ts';
import { lengthOr, none, writerFor } from '../words/written.ts';
import { fuseAlternatives, fusesLacking } from './alternatives.ts';
import { builderSheet } from './sheet.ts';
import { dense, strong, type Table, tableOf, tick } from './table.ts';

/** The feed as a diagram, with its fuses, what each device draws and what the alternator gives. */
export interface PowerDiagramSheet {
  /** Tables that have something in them, in their order. */
  readonly tables: readonly Table[];
}

function fusesTable(plan: BuildPlan, names: PlanNames): Table {
  const write = writerFor(plan.shop);
  return tableOf(
    'Fuses',
    plan.power.fuses,
    [
      { title: 'Fuse', cell: (fuse) => strong(names.item(fuse.item), fuse.way) },
      {
        title: 'Rating',
        kind: 'figure',
        leads: true,
        cell: ({ form, ratingA }) => {
          const colour = ratingA === null ? null : bladeColour(form, ratingA);
          return strong(
            ratingA === null ? 'none chosen' : printed('current-allowed', ratingA),
            colour === null ? undefined : `${colour} body, ISO 8820-3`,
          );
        },
      },
      {
        title: 'Form',
        cell: (fuse) => ({
          text: fuseForms[fuse.form].name,
          ...(fuse.part === null && { beside: 'not in the catalogue' }),
        }),
      },
      {
        title: 'From its source',
        kind: 'figure',
        cell: (fuse) => lengthOr(fuse.distanceM, (lengthM) => write.short('from-source', lengthM)),
      },
      {
        title: 'Protects',
        kind: 'words',
        cell: (fuse) => (fuse.protects.length === 0 ? none : fuse.protects.map(names.wire).join(', ')),
      },
      { title: 'At rated power', kind: 'figure', cell: (fuse) => printed('current-carried', fuse.ratedA) },
      { title: 'In stock', kind: 'figure', cell: (fuse) => String(fuse.stockQuantity) },
      tick('Fitted'),
    ],
    (fuse) => fuse.id,
  );
}

function loadsTable(plan: BuildPlan, names: PlanNames): Table {
  return tableOf(
    'Current of each device',
    plan.power.loads,
    [
      { title: 'Device', cell: (load) => strong(names.item(load.item), load.item) },
      { title: 'Fuses of its maker', kind: 'figure', cell: (load) => printed('current-allowed', load.fuseA) },
      {
        title: 'At rated power',
        kind: 'figure',
        leads: true,
        cell: (load) => printed('current-carried', load.ratedA),
      },
      { title: 'With music', kind: 'figure', cell: (load) => printed('current-carried', load.musicA) },
      { title: 'Idle', kind: 'figure', cell: (load) => printed('current-carried', load.idleA) },
      { title: 'Rated power', kind: 'figure', cell: (load) => printed('power', load.powerW) },
    ],
    (load) => load.item,
  );
}

type Recharge = NonNullable<BuildPlan['power']['charging'][number]['recharges']>[number];

function chargingTable(plan: BuildPlan): Table {
  return tableOf('Charging', plan.power.charging, [
    { title: 'Regime', cell: (regime) => strong(regime.name) },
    {
      title: 'Alternator gives',
      kind: 'figure',
      cell: (regime) => printed('current-allowed', regime.alternatorA),
    },
    { title: 'Vehicle takes', kind: 'figure', cell: (regime) => printed('current-carried', regime.vehicleA) },
    {
      title: 'Audio, average',
      kind: 'figure',
      cell: (regime) => printed('current-carried', regime.averageA),
    },
    {
      title: 'Margin',
      kind: 'figure',
      leads: true,
      cell: (regime) => printed('current-left', regime.marginA),
    },
    {
      title: 'Batteries take',
      kind: 'figure',
      cell: (regime) => printed('current-left', regime.batteryA),
    },
    { title: 'Reserve', kind: 'figure', cell: (regime) => printed('time-left', regime.reserveMinutes) },
    {
      title: 'Recharge after it',
      kind: 'figure',
      cell: ({ rechargeMinutes, recharges = [] }) => ({
        text: printed('time-needed', rechargeMinutes),
        ...(recharges.length > 0 && { beside: recharges.map(rechargeText).join('; ') }),
      }),
    },
  ]);
}

/** Which battery it is that is charged, and through what: `rear 66 min through isolator`. */
function rechargeText({ battery, minutes, through }: Recharge): string {
  const way = through.length > 0 ? ` through ${through.join(' and ')}` : '';
  return `${battery} ${minutes === null ? 'takes nothing up' : `${printed('time-needed', minutes)}${way}`}`;
}

function turnOnTable(plan: BuildPlan): Table {
  const loadText = ({ item, currentA }: PlanTurnOn['loads'][number]): string =>
    `${item} ${printed('small-current-carried', currentA)}`;
  return tableOf(
    'Turn-on',
    plan.power.turnOn,
    [
      { title: 'Output', cell: (one) => strong(one.source) },
      { title: 'Drives', cell: (one) => one.loads.map(loadText).join(', ') },
      {
        title: 'Sum',
        kind: 'figure',
        leads: true,
        cell: (one) => printed('small-current-carried', one.sumA),
      },
      { title: 'Limit', kind: 'figure', cell: (one) => printed('small-current-allowed', one.limitA) },
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
  const names = namesOf(plan);
  const tables = [
    dense(fusesTable(plan, names)),
    fuseAlternatives('In place of fuses that the shelf lacks', fusesLacking(plan)),
    dense(loadsTable(plan, names)),
    dense(chargingTable(plan)),
    dense(turnOnTable(plan)),
  ].filter((table) => table.rows.length > 0);
  return tables.length === 0 ? null : { tables };
}

export const powerDiagram = builderSheet('power-diagram', 'Power diagram and fuses', powerModel, {
  cautions: ['battery', 'voltage'],
});
