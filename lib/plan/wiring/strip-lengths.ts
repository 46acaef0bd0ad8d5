import type { Job } from '../../model/content/resolved-job.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import { type Traced, traced } from '../../model/trace.ts';

/** How far to strip an end (m): by what is crimped on, else by its port, else by common practice. */
export function stripLength(
  job: Job,
  part: string | null,
  spec: Pick<TerminalSpec, 'strip'>,
  usual: Traced<number>,
): Traced<number> {
  const terminal = part === null ? undefined : job.parts[part];
  const own = terminal?.kind === 'terminal' ? terminal.strip : undefined;
  if (own !== undefined) return given(own, 'm', 'strip-length', `the data of ${part}`);
  return spec.strip === undefined ? usual : given(spec.strip, 'm', 'strip-length', "the port's data");
}

function given(value: number, unit: string, rule: string, citation: string): Traced<number> {
  return traced(value, unit, { origin: 'given', rule, citation });
}
