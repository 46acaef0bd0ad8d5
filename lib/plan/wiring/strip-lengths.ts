import type { Job } from '../../model/content/resolved-job.ts';
import { houseRuleDefinition } from '../../model/house-rules.ts';
import type { TerminalSpec } from '../../model/kinds/kind.ts';
import { type Traced, traced } from '../../model/trace.ts';

/** How far to strip an end (m): by what is crimped on, else by its port, else by common practice. */
export function stripLength(
  job: Job,
  part: string | null,
  spec: TerminalSpec,
  usual: Traced<number>,
): Traced<number> {
  const terminal = part === null ? undefined : job.parts[part];
  const own = terminal?.kind === 'terminal' ? terminal.strip : undefined;
  if (own !== undefined) return given(own, 'm', 'strip-length', `the data of ${part}`);
  return spec.strip === undefined ? usual : given(spec.strip, 'm', 'strip-length', "the port's data");
}

const nutRules = { M6: 'torque-rivet-nut-m6', M8: 'torque-rivet-nut-m8' } as const;
const boltRules = { M6: 'torque-m6', M8: 'torque-m8' } as const;

/**
 * Torque of an end (N m): by the port's maker; of a bolt in the body by the house rules, the lesser of its thread and of
 * the rivet nut that it goes into; else not known.
 */
export function torque(
  { rules, vehicle }: Job,
  spec: TerminalSpec | undefined,
  terminal: string,
): Traced<number> | null {
  if (spec?.torque !== undefined) return given(spec.torque, 'N m', 'torque', "the port's data");
  const { stud } = spec ?? {};
  if (spec?.joint !== 'body-bolt' || (stud !== 'M6' && stud !== 'M8')) return null;
  const names = [
    boltRules[stud],
    ...(vehicle.grounds[terminal]?.insert === 'welded' ? [] : [nutRules[stud]]),
  ];
  const [rule = boltRules[stud]] = names.toSorted((a, b) => rules[a].value - rules[b].value);
  const { citation, mark } = houseRuleDefinition(rule);
  return traced(rules[rule].value, 'N m', {
    ...{ origin: 'assumed', rule, citation, ...(mark && { mark }) },
    formula: 'the least of bolt and insert',
    inputs: names.map((name) => [name, rules[name].value, 'N m'] as const),
  });
}

function given(value: number, unit: string, rule: string, citation: string): Traced<number> {
  return traced(value, unit, { origin: 'given', rule, citation });
}
