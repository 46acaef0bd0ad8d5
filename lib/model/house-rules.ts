import { z } from 'zod';
import { builders } from './audience.ts';
import { count, quantityWithin } from './fields.ts';
import { audioRules } from './house-rules/audio.ts';
import { batteryRules } from './house-rules/batteries.ts';
import { boardRules } from './house-rules/board.ts';
import { conductorRules } from './house-rules/conductors.ts';
import type { RuleDefinition } from './house-rules/definition.ts';
import { fuseRules } from './house-rules/fuses.ts';
import { groundRules } from './house-rules/grounds.ts';
import { layoutRules } from './house-rules/layout.ts';
import { powerAndSignalRules } from './house-rules/power-and-signal.ts';
import { raisingRules } from './house-rules/raising.ts';
import { routingRules } from './house-rules/routing.ts';
import { faultRules } from './house-rules/short-circuit.ts';
import { supplyRules } from './house-rules/supply.ts';
import { wiringRules } from './house-rules/wiring.ts';
import { handText } from './quantity/hand-text.ts';

/**
 * Every house rule with its default, its source and its mark. A shop sets its own value in `shop.yaml`
 * under `rules:` by the same key.
 */
export const houseRuleDefinitions = {
  ...supplyRules,
  ...batteryRules,
  ...conductorRules,
  ...groundRules,
  ...fuseRules,
  ...faultRules,
  ...wiringRules,
  ...powerAndSignalRules,
  ...boardRules,
  ...layoutRules,
  ...routingRules,
  ...raisingRules,
  ...audioRules,
} as const satisfies Record<string, RuleDefinition>;
export type HouseRuleName = keyof typeof houseRuleDefinitions;

/** The definition of a rule, its literal types widened. */
export function houseRuleDefinition(name: HouseRuleName): RuleDefinition {
  return houseRuleDefinitions[name];
}

/** True for the key of a house rule. */
export function isHouseRuleName(name: string): name is HouseRuleName {
  return Object.hasOwn(houseRuleDefinitions, name);
}

/** Every key, in the order of the table. */
export const houseRuleNames: readonly HouseRuleName[] =
  Object.keys(houseRuleDefinitions).filter(isHouseRuleName);

/** How the value of a house rule is written, within its bounds. */
export function houseRuleValue(name: HouseRuleName) {
  const { dimension, above, least, most } = houseRuleDefinition(name);
  return dimension === 'count' ? count : quantityWithin(dimension, { above, least, most });
}

function ruleField(name: HouseRuleName) {
  const { dimension, says, value } = houseRuleDefinition(name);
  const usual = dimension === 'count' ? value : handText(value, dimension, 'inch');
  return builders(houseRuleValue(name).optional(), says, { example: usual, leftOut: `{${name}}` });
}

/** `rules:` of the shop file: each key optional, each value with its unit. */
export const houseRulesSchema = z.strictObject(
  Object.fromEntries(houseRuleNames.map((name) => [name, ruleField(name)])),
);

/** A house rule as the plan uses it: its value in SI, whether someone gave it, and whether that was read at the vehicle. */
export interface HeldRule {
  readonly value: number;
  readonly given: boolean;
  readonly ofVehicle?: true;
}

/** House rules as the plan uses them: every rule has a value. */
export type HouseRules = Readonly<Record<HouseRuleName, HeldRule>>;
