import type { BuildPlan, DeviceDrop, NetworkElement, OperatingPoint } from '../../model/plan/index.ts';
import { measure, measureOr } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { strong, type Table, tableOf } from './table.ts';

/** Voltage, drop and heat through the feed at each operating point. */
export interface DropTableSheet {
  readonly points: readonly PointDrops[];
}

interface PointDrops {
  readonly title: string;
  readonly state: string;
  /** Why a point could not be solved; empty where it could. */
  readonly reason: string;
  readonly devices: Table | null;
  readonly drops: Table | null;
}

const stateWords = {
  solved: 'Solved',
  'no-solution': 'No solution: the feed can not carry what the devices ask for',
  'cut-out': 'A device cuts out: its voltage falls too low',
} as const satisfies Record<OperatingPoint['state'], string>;

const kindWords = {
  source: 'Source',
  conductor: 'Conductor',
  fuse: 'Fuse',
  joint: 'Joint',
  load: 'Device',
} as const satisfies Record<NetworkElement['kind'], string>;

type NameOf = (of: string) => string;

function devicesTable(point: OperatingPoint, drops: readonly DeviceDrop[], nameOf: NameOf): Table | null {
  const own = drops.filter((drop) => drop.point === point.name);
  if (own.length === 0) return null;
  return tableOf(
    `Voltage at the devices, ${point.title}`,
    own,
    [
      { title: 'Device', cell: (one) => strong(nameOf(one.item), one.item) },
      { title: 'Fed from', cell: (one) => nameOf(one.source) },
      { title: 'Voltage', kind: 'figure', cell: (one) => strong(measure(one.voltageV, 'V', 2)) },
      { title: 'Drop of feed', kind: 'figure', cell: (one) => measure(one.feedDropV, 'V', 3) },
      { title: 'Drop of ground', kind: 'figure', cell: (one) => measure(one.groundDropV, 'V', 3) },
      { title: 'Both', kind: 'figure', cell: (one) => measure(one.share * 100, '%', 1) },
    ],
    (one) => one.item,
  );
}

function dropsTable(point: OperatingPoint, nameOf: NameOf): Table | null {
  const parts = point.elements;
  if (parts.length === 0) return null;
  return tableOf(
    `Every part of the network, ${point.title}`,
    parts,
    [
      { title: 'Part', cell: (one) => strong(nameOf(one.of), one.id) },
      { title: 'Kind', cell: (one) => kindWords[one.kind] },
      { title: 'Current', kind: 'figure', cell: (one) => measureOr(absolute(one.currentA), 'A', 1) },
      { title: 'Volts across it', kind: 'figure', cell: (one) => measureOr(absolute(one.dropV), 'V', 3) },
      { title: 'Heat', kind: 'figure', cell: (one) => measureOr(one.heatW, 'W', 2) },
    ],
    (one) => one.of,
  );
}

function absolute(value: number | undefined): number | undefined {
  return value === undefined ? undefined : Math.abs(value);
}

function dropModel(plan: BuildPlan): DropTableSheet | null {
  if (plan.power.points.length === 0) return null;
  const names = new Map([
    ...plan.items.map((item) => [item.id, item.title] as const),
    ...plan.wires.map((wire) => [wire.id, `Wire ${wire.label}`] as const),
  ]);
  const nameOf: NameOf = (of) => names.get(of) ?? of;
  return {
    points: plan.power.points.map((point) => ({
      title: point.title,
      state: stateWords[point.state],
      reason: point.reason ?? '',
      devices: devicesTable(point, plan.power.drops, nameOf),
      drops: dropsTable(point, nameOf),
    })),
  };
}

export const dropTable = builderSheet('drop-table', 'Voltage drop', dropModel);
