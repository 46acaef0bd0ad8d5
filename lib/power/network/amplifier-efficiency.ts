import type { HouseRules } from '../../model/house-rules.ts';
import type { Supply } from '../../model/kinds/fields/supply.ts';
import type { Efficiency } from './load-current.ts';

/** What an amplifier draws without a signal (A): as its maker says, else by its class. */
export function idleCurrentA(supply: Supply, rules: HouseRules): number {
  const isAb = (supply['amplifier-class'] ?? 'class-ab') === 'class-ab';
  return supply.idle ?? rules[isAb ? 'idle-class-ab' : 'idle-class-d'].value;
}

/**
 * Efficiency of an amplifier at full power and at an eighth: as its maker says, else the house rule of its class. At an
 * eighth it is at most that at full power, which its maker may give alone.
 */
export function amplifierEfficiency(supply: Supply, rules: HouseRules): Efficiency {
  const name = supply['amplifier-class'] ?? 'class-ab';
  const full = supply.efficiency?.full ?? rules[`efficiency-${name}`].value;
  return {
    full,
    eighth: supply.efficiency?.eighth ?? Math.min(full, rules[`efficiency-${name}-eighth`].value),
    idleA: idleCurrentA(supply, rules),
    ...(supply['music-current'] !== undefined && { eighthA: supply['music-current'] }),
  };
}
