import type { FindingId } from '../../lib/model/findings/index.ts';
import { rules } from '../../lib/rules/index.ts';
import type { Case } from '../../lib/rules/rule.ts';

/** What one rule finds in a job and its plan. */
export function found(rule: FindingId, about: Case) {
  const own = rules.find(({ id }) => id === rule);
  if (!own) throw new Error(`There is no rule ${rule}.`);
  return own.judge(about);
}
