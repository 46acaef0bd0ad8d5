import type { BuildPlan, PlanItem } from '../../model/plan/index.ts';
import { ruleOf } from '../../model/plan/plan-rules.ts';
import { handOverLacks, lackText } from './packet-lacks.ts';

/** Serial numbers as the job writes them, by device. */
export type Serials = Readonly<Record<string, string>>;

/** What a packet needs of a plan beyond what its reader sees of it: words that are fit for everyone. */
export interface HandOver {
  /** Why there is no packet, in sentences; empty where there may be one. */
  readonly refused: readonly string[];
  /** Days after which power joints are tightened again. */
  readonly retorqueDays: number;
  /** What was put in and bears a serial number, with the number where the job writes it. */
  readonly equipment: readonly { readonly name: string; readonly serial: string | null }[];
  /** The highest voltage that the system may be charged at (V). */
  readonly highestV: number;
}

/** What a plan's packet rests on; serial numbers stand beside the plan, for the customer and the shop alone. */
export function handOverOf(plan: BuildPlan, serials: Serials): HandOver {
  return {
    refused: handOverLacks(plan).map(lackText),
    equipment: equipmentOf(plan, serials),
    retorqueDays: ruleOf(plan, 'retorque-days'),
    highestV: ruleOf(plan, 'voltage-variable-high'),
  };
}

/** Kinds of equipment that bear a serial number. */
const numbered: readonly PlanItem['kind'][] = [
  'amplifier',
  'processor',
  'source-unit',
  'speaker',
  'battery',
  'alternator',
  'charger',
  'isolating-relay',
  'capacitor-bank',
];

/** What the job adds and bears a serial number. */
export function equipmentOf({ items }: Pick<BuildPlan, 'items'>, serials: Serials): HandOver['equipment'] {
  return items
    .filter(({ kind, origin }) => origin === 'job' && numbered.includes(kind))
    .map(({ id, title, partTitle }) => ({ name: `${title}: ${partTitle}`, serial: serials[id] ?? null }));
}
