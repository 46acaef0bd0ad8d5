import type { Job } from '../../model/content/resolved-job.ts';
import { type HouseRules, houseRuleDefinition, isHouseRuleName } from '../../model/house-rules.ts';
import type { PartOf } from '../../model/kinds/index.ts';

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

/**
 * What the regulator of an alternator holds (V): as measured in the vehicle; else what its part says, else the house
 * rule for hot idle. One that varies it holds the voltage for sizing. Where it was not measured a hot regulator may hold
 * no more than at hot idle, and a cold one what rated power is stated at.
 */
export function setPointV(
  { rules, vehicle }: Pick<Job, 'rules' | 'vehicle'>,
  spec: PartOf<'alternator'>,
  end?: SupplyEnd,
): number {
  const told = spec['set-point'];
  if (spec['variable-voltage']) {
    if (end) return rules[end === 'weak' ? 'voltage-variable-low' : 'voltage-variable-high'].value;
    return Math.min(rules['voltage-variable'].value, told ?? Number.POSITIVE_INFINITY);
  }
  const measured = vehicle['charging-voltage'];
  if (measured !== undefined) return measured;
  const hotV = rules['voltage-sizing'].value;
  if (end === 'weak') return Math.min(hotV, told ?? hotV);
  return end === 'strong' ? Math.max(told ?? hotV, rules['voltage-rated'].value) : (told ?? hotV);
}
