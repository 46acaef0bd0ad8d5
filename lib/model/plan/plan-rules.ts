import { type HouseRuleName, houseRuleDefinition } from '../house-rules.ts';

/** The house rules that a plan keeps; none of those that came after it was frozen. */
export interface RulesOfPlan {
  readonly rules: readonly { readonly name: string; readonly value: number }[];
}

/** The value of a house rule as a plan was made by it, in SI; its default for a plan frozen before rules were kept. */
export function ruleOf({ rules }: RulesOfPlan, name: HouseRuleName): number {
  return rules.find((rule) => rule.name === name)?.value ?? houseRuleDefinition(name).value;
}
