import type { Job } from '../model/content/resolved-job.ts';
import { houseRuleDefinition, houseRuleNames } from '../model/house-rules.ts';
import type { PlanHouseRule } from '../model/plan/index.ts';
import { dimensions } from '../model/quantity/quantity.ts';

/**
 * Every house rule that the plan was made by, in SI: its value, whether the shop set it, the source and the mark of
 * its default. The plan keeps them, since the shop may set them otherwise by the time a frozen plan is read.
 */
export function planHouseRules({ rules }: Pick<Job, 'rules'>): PlanHouseRule[] {
  return houseRuleNames.map((name): PlanHouseRule => {
    const { says, dimension, citation, mark, value } = houseRuleDefinition(name);
    const unit = dimension === 'count' ? '' : dimensions[dimension].si;
    return {
      name,
      says,
      value: rules[name].value,
      unit: unit === '1' ? '' : unit,
      given: rules[name].given,
      standard: value,
      citation,
      ...(mark && { mark }),
    };
  });
}
