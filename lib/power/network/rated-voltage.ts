import type { HouseRules } from '../../model/house-rules.ts';
import type { Supply } from '../../model/kinds/fields/supply.ts';

/**
 * The supply voltage at which the rated powers of an amplifier were measured (V): as its maker says, else the house rule,
 * times `systemShare`, how many times the usual system its vehicle's is.
 */
export function ratedSupplyV(supply: Supply, rules: HouseRules, systemShare = 1): number {
  return supply['rated-at'] ?? rules['voltage-rated'].value * systemShare;
}
