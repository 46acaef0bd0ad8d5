import type { HouseRules } from '../../model/house-rules.ts';
import type { Supply } from '../../model/kinds/fields/supply.ts';
import type { Efficiency } from './load-current.ts';

/** What an amplifier draws without a signal (A): as its maker says, else by its class. */
export function idleCurrentA(supply: Supply, rules: HouseRules): number {
  const isAb = (supply['amplifier-class'] ?? 'class-ab') === 'class-ab';
  return supply.idle ?? rules[isAb ? 'idle-class-ab' : 'idle-class-d'].value;
}

/** Efficiency of an amplifier at full power and at an eighth: as its maker says, else the house rule of its class. */
export function amplifierEfficiency(supply: Supply, rules: HouseRules): Efficiency {
  const name = supply['amplifier-class'] ?? 'class-ab';
  return {
    full: supply.efficiency?.full ?? rules[`efficiency-${name}`].value,
    eighth: supply.efficiency?.eighth ?? rules[`efficiency-${name}-eighth`].value,
    idleA: idleCurrentA(supply, rules),
  };
}
