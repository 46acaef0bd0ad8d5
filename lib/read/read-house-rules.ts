import {
  type HouseRuleName,
  type HouseRules,
  houseRuleDefinition,
  houseRuleNames,
} from '../model/house-rules.ts';
import { inSystem, type SystemVoltage } from '../model/system-voltage.ts';

type Rule = HouseRules[HouseRuleName];

/** Every house rule with its value: the shop's own where it gave one, the default otherwise. */
export function readHouseRules(given: Readonly<Record<string, number | undefined>>): HouseRules {
  const rule = (name: HouseRuleName): Rule => {
    const own = given[name];
    return own === undefined
      ? { value: houseRuleDefinition(name).value, given: false }
      : { value: own, given: true };
  };
  const rules: Partial<Record<HouseRuleName, Rule>> = {};
  for (const name of houseRuleNames) rules[name] = rule(name);
  return complete(rules);
}

/** The house rules as they hold in a vehicle: voltages that are stated for the usual system, in proportion to its own. */
export function rulesInSystem(rules: HouseRules, system: SystemVoltage): HouseRules {
  const own: Partial<Record<HouseRuleName, Rule>> = {};
  for (const name of houseRuleNames) {
    const { value, given } = rules[name];
    own[name] = { value: houseRuleDefinition(name).bySystem ? inSystem(value, system) : value, given };
  }
  return complete(own);
}

function complete(rules: Partial<Record<HouseRuleName, Rule>>): HouseRules {
  if (isComplete(rules)) return rules;
  throw new Error('A house rule has no value.');
}

function isComplete(rules: Partial<Record<HouseRuleName, Rule>>): rules is HouseRules {
  return houseRuleNames.every((name) => rules[name] !== undefined);
}
