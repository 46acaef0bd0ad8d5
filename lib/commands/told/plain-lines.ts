import type { Finding } from '../../model/finding.ts';
import { placeText } from '../../model/place.ts';
import type { Problem } from '../../model/problem.ts';

/** The words that editors and compilers have for how grave a message is. */
const severities = { stop: 'error', caution: 'warning', note: 'note' } as const satisfies Record<
  Finding['level'],
  string
>;

/** A problem in one line, as compilers tell their errors: `file:line:column: error: what is wrong`. */
export function plainProblem({ where, message, expected, remedy }: Problem): string {
  const more = [
    ...(expected === undefined ? [] : [`expected: ${expected}`]),
    ...(remedy === undefined ? [] : [`to do: ${remedy}`]),
  ];
  return line(`${placeText(where)}: error: ${[message, ...more].join('; ')}`);
}

/** A finding in one line, as compilers tell their warnings; what only follows from it goes with it, and is not told. */
export function plainFinding({ where, level, message, remedy, rule, accepted }: Finding): string {
  const what = `${severities[level]}: ${level}${accepted ? ', accepted' : ''}: ${message}`;
  return line(`${placeText(where)}: ${what}; to do: ${remedy} [${rule}]`);
}

const line = (text: string): string => text.replace(/\s*[\r\n]+\s*/g, ' ');
