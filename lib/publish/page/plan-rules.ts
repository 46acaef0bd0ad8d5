import { type HouseRuleName, houseRuleDefinition } from '../../model/house-rules.ts';
import type { BuildPlan } from '../../model/plan/index.ts';

/** The value of a house rule as a plan was made by it, in SI; its default for a plan frozen before rules were kept. */
export function ruleOf({ rules }: Pick<BuildPlan, 'rules'>, name: HouseRuleName): number {
  return rules.find((rule) => rule.name === name)?.value ?? houseRuleDefinition(name).value;
}
