import { type HouseRules, houseRuleDefinition, isHouseRuleName } from '../../model/house-rules.ts';

/** An end of what the house rules leave open: the supply weakest, or strongest. */
export type SupplyEnd = 'weak' | 'strong';

/**
 * The house rules at an end of their usual ranges, in proportion to their values here. What the shop set stays, but for
 * what differs from vehicle to vehicle: there the range is widened to hold the shop's value.
 */
export function rulesAt(rules: HouseRules, end: SupplyEnd): HouseRules {
  const moved = Object.entries(rules).map(([name, rule]) => {
    const definition = isHouseRuleName(name) ? houseRuleDefinition(name) : null;
    const spread = definition?.spread;
    if (!definition || !spread || (rule.given && !spread.byVehicle)) return [name, rule] as const;
    if (!rule.given)
      return [name, { ...rule, value: (rule.value * spread[end]) / definition.value }] as const;
    const isUpper = spread[end] === Math.max(spread.weak, spread.strong);
    const value = isUpper ? Math.max(rule.value, spread[end]) : Math.min(rule.value, spread[end]);
    return [name, { ...rule, value }] as const;
  });
  return { ...rules, ...Object.fromEntries(moved) };
}
