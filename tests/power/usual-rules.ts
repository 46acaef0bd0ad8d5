import type { HouseRules } from '../../lib/model/house-rules.ts';
import { coveringFit } from '../../lib/plan/wiring/runs/run-coverings.ts';
import type { CoveringFit } from '../../lib/power/conductor/covering-size.ts';
import { powerRules } from '../../lib/power/house-power-rules.ts';
import type { Efficiency } from '../../lib/power/network/load-current.ts';
import type { PowerRules } from '../../lib/power/power-rules.ts';
import { readHouseRules } from '../../lib/read/read-house-rules.ts';

/** The house rules of a shop that sets none: the table's own values, by the same ways as any shop's. */
export const usualHouseRules: HouseRules = readHouseRules({});
export const usualRules: PowerRules = powerRules(usualHouseRules);
export const usualFit: CoveringFit = coveringFit(usualHouseRules);

/** What an amplifier makes of its input by its class. */
export function usualEfficiency(name: 'class-ab' | 'class-d' | 'bass-class-d'): Efficiency {
  const idle = name === 'class-ab' ? 'idle-class-ab' : 'idle-class-d';
  return {
    full: usualHouseRules[`efficiency-${name}`].value,
    eighth: usualHouseRules[`efficiency-${name}-eighth`].value,
    idleA: usualHouseRules[idle].value,
  };
}
