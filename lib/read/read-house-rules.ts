import type { Vehicle } from '../model/content/vehicle.ts';
import {
  type HeldRule,
  type HouseRuleName,
  type HouseRules,
  houseRuleDefinition,
  houseRuleNames,
} from '../model/house-rules.ts';
import { inSystem, type SystemVoltage, systemVoltageOf } from '../model/system-voltage.ts';
import { isAmbientGroup } from '../model/zone-ambient.ts';

/** Every house rule with its value: the shop's own where it gave one, the default otherwise. */
export function readHouseRules(given: Readonly<Record<string, number | undefined>>): HouseRules {
  const rule = (name: HouseRuleName): HeldRule => {
    const own = given[name];
    return own === undefined
      ? { value: houseRuleDefinition(name).value, given: false }
      : { value: own, given: true };
  };
  const rules: Partial<Record<HouseRuleName, HeldRule>> = {};
  for (const name of houseRuleNames) rules[name] = rule(name);
  return complete(rules);
}

/** The house rules as they hold in a vehicle: voltages in proportion to its system, ambients as they were read there. */
export function rulesInVehicle(rules: HouseRules, vehicle: Vehicle): HouseRules {
  const own: Partial<Record<HouseRuleName, HeldRule>> = {};
  for (const [group, value] of Object.entries(vehicle.ambient ?? {}))
    if (isAmbientGroup(group) && value !== undefined)
      own[`ambient-${group}`] = { value, given: true, ofVehicle: true };
  return { ...rulesInSystem(rules, systemVoltageOf(vehicle['system-voltage'])), ...own };
}

/** Voltages that are stated for the usual system, in proportion to a vehicle's own. */
function rulesInSystem(rules: HouseRules, system: SystemVoltage): HouseRules {
  const own: Partial<Record<HouseRuleName, HeldRule>> = {};
  for (const name of houseRuleNames) {
    const { value, given } = rules[name];
    own[name] = { value: houseRuleDefinition(name).bySystem ? inSystem(value, system) : value, given };
  }
  return complete(own);
}

function complete(rules: Partial<Record<HouseRuleName, HeldRule>>): HouseRules {
  if (isComplete(rules)) return rules;
  throw new Error('A house rule has no value.');
}

function isComplete(rules: Partial<Record<HouseRuleName, HeldRule>>): rules is HouseRules {
  return houseRuleNames.every((name) => rules[name] !== undefined);
}
