import type { BuildPlan } from '../../model/plan/index.ts';
import { equipmentOf } from '../packet/hand-over.ts';
import { handOverLacks, lackText } from '../packet/packet-lacks.ts';
import { addresses, fileOf } from '../site/addresses.ts';
import { builderSheet } from './sheet.ts';

/** Whether the vehicle may be handed over, and the way to what its owner takes home. */
export interface HandOverSheet {
  /** What stands in the way; empty where nothing does. */
  readonly lacks: readonly HandOverLackRow[];
  /** The packet, from the top of the site. */
  readonly packet: string;
}

interface HandOverLackRow {
  readonly text: string;
  /** The lines of the record that it is about, where they can be told in one breath. */
  readonly lines: readonly string[];
  /** Whether it is about lines of the record, so that the record is where to go on. */
  readonly recorded: boolean;
}

/** More lines than these are read in the record itself. */
const mostNamed = 6;

function handOverModel(plan: BuildPlan): HandOverSheet | null {
  if (equipmentOf(plan, {}).length === 0) return null;
  return {
    lacks: handOverLacks(plan).map((lack) => ({
      text: lackText(lack),
      lines: lack.lines.length > mostNamed ? [] : lack.lines,
      recorded: lack.lines.length > 0,
    })),
    packet: fileOf(addresses.packet(plan.job.id)),
  };
}

export const packet = builderSheet('packet', 'Hand-over', handOverModel, { cautions: ['hearing'] });
