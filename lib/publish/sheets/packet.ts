import type { BuildPlan } from '../../model/plan/index.ts';
import { equipmentOf } from '../packet/hand-over.ts';
import { handOverLacks, lackText } from '../packet/packet-lacks.ts';
import { addresses, fileOf } from '../site/addresses.ts';
import { builderSheet } from './sheet.ts';

/** Whether the vehicle may be handed over, and the way to what its owner takes home. */
export interface HandOverSheet {
  /** What stands in the way, each with the lines of the record that it is about; empty where nothing does. */
  readonly lacks: readonly { readonly text: string; readonly lines: readonly string[] }[];
  /** The packet, from the top of the site. */
  readonly packet: string;
}

function handOverModel(plan: BuildPlan): HandOverSheet | null {
  if (equipmentOf(plan, {}).length === 0) return null;
  return {
    lacks: handOverLacks(plan).map((lack) => ({ text: lackText(lack), lines: lack.lines })),
    packet: fileOf(addresses.packet(plan.job.id)),
  };
}

export const packet = builderSheet('packet', 'Hand-over', handOverModel, { cautions: ['hearing'] });
