import type { BuildPlan, PlanFuse, PlanItem } from '../../model/plan/index.ts';
import { ruleOf } from '../../model/plan/plan-rules.ts';
import { printed } from '../../model/printed/index.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import { spelledWithin } from '../words/words.ts';
import { handOverLacks, lackText } from './packet-lacks.ts';

/** A fuse that makes the feed dead: what whoever puts one back must know. */
export interface MainFuse {
  readonly name: string;
  readonly rating: string;
  readonly form: string;
  readonly place: string;
}

/** Serial numbers as the job writes them, by device. */
export type Serials = Readonly<Record<string, string>>;

/** What a packet needs of a plan beyond what its reader sees of it: words that are fit for everyone. */
export interface HandOver {
  /** Why there is no packet, in sentences; empty where there may be one. */
  readonly refused: readonly string[];
  readonly mainFuses: readonly MainFuse[];
  readonly hasBoards: boolean;
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
    mainFuses: mainFusesOf(plan),
    hasBoards: plan.boards.length > 0,
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

function equipmentOf({ items }: Pick<BuildPlan, 'items'>, serials: Serials): HandOver['equipment'] {
  return items
    .filter(({ kind, origin }) => origin === 'job' && numbered.includes(kind))
    .map(({ id, title, partTitle }) => ({ name: `${title}: ${partTitle}`, serial: serials[id] ?? null }));
}

/** The fuses nearest to a source that the job adds. */
function mainFusesOf({ power, items, boards }: BuildPlan): MainFuse[] {
  return power.fuses.flatMap((fuse): MainFuse[] => {
    const item = items.find(({ id }) => id === fuse.item);
    if (fuse.source === null || item?.origin !== 'job') return [];
    const board = boards.find(({ id }) => id === item.board)?.title;
    const place = item.seatTitle ?? board ?? spelledWithin(item.zone);
    const name = hasWays(power.fuses, fuse) ? `${item.title}, ${fuse.way}` : item.title;
    return [
      {
        name,
        rating: printed('current-allowed', fuse.ratingA),
        form: fuseForms[fuse.form].name,
        place: `${place.charAt(0).toLowerCase()}${place.slice(1)}`,
      },
    ];
  });
}

/** True where its holder has more than one fuse: then the way tells which. */
function hasWays(fuses: readonly PlanFuse[], { item }: PlanFuse): boolean {
  return fuses.filter((other) => other.item === item).length > 1;
}
