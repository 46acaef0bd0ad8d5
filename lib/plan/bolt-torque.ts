import type { Job } from '../model/content/resolved-job.ts';
import type { HouseRules } from '../model/house-rules.ts';
import { houseRuleDefinition } from '../model/house-rules.ts';
import type { TerminalSpec } from '../model/kinds/fields/terminal-spec.ts';
import type { Traced } from '../model/trace.ts';
import { traced } from '../model/trace.ts';

const nutRules = { M6: 'torque-rivet-nut-m6', M8: 'torque-rivet-nut-m8' } as const;

const boltRules = { M6: 'torque-m6', M8: 'torque-m8' } as const;

/** Torque of a steel bolt of a thread by the house rule, N m; null for a thread that has none. */
export function studTorque(rules: HouseRules, thread: string): number | null {
  return thread === 'M6' || thread === 'M8' ? rules[boltRules[thread]].value : null;
}

/** Torque that a rivet nut takes, N m: a larger one counts as M8; of a smaller one it is not known. */
export function insertTorque(rules: HouseRules, thread: string): number | undefined {
  if (thread === 'M6') return rules[nutRules.M6].value;
  return thread === 'M4' || thread === 'M5' ? undefined : rules[nutRules.M8].value;
}

/**
 * Torque of an end (N m): by the port's maker; of a bolt in the body by the house rules, the lesser of its thread and of
 * the rivet nut that it goes into; else not known.
 */
export function torque(
  { rules, vehicle }: Pick<Job, 'rules' | 'vehicle'>,
  spec: TerminalSpec | undefined,
  terminal: string,
): Traced<number> | null {
  if (spec?.torque !== undefined)
    return traced(spec.torque, 'N m', { origin: 'given', rule: 'torque', citation: "the port's data" });
  const { stud } = spec ?? {};
  if (spec?.joint !== 'body-bolt' || (stud !== 'M6' && stud !== 'M8')) return null;
  const names = [
    boltRules[stud],
    ...((vehicle.grounds[terminal]?.insert ?? 'rivet-nut') === 'rivet-nut' ? [nutRules[stud]] : []),
  ];
  const [rule = boltRules[stud]] = names.toSorted((a, b) => rules[a].value - rules[b].value);
  const { citation, mark } = houseRuleDefinition(rule);
  return traced(rules[rule].value, 'N m', {
    ...{ origin: 'assumed', rule, citation, ...(mark && { mark }) },
    formula: 'the least of bolt and insert',
    inputs: names.map((name) => [name, rules[name].value, 'N m'] as const),
  });
}
