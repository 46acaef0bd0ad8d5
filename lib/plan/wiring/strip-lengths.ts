import type { Job } from '../../model/content/resolved-job.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { listed } from '../../model/printed/listed.ts';
import { type Traced, traced } from '../../model/trace.ts';
import type { PlanBook } from '../plan-book.ts';
import type { PreparedEnd } from './prepared-end.ts';

/** Where an end is stripped for: what is crimped on, and the port with what its maker asks. */
export interface StrippedFor {
  readonly part: string | null;
  readonly spec?: Pick<TerminalSpec, 'strip'>;
  /** True where the bared end itself goes into the port, in a ferrule or without one. */
  readonly clamped?: boolean;
}

/**
 * How far to strip an end (m). What is clamped goes as deep as the port's maker asks, in a ferrule too; a barrel takes
 * what its own part tells. Where the one that rules is silent the other one is asked, and then common practice.
 */
export function stripLength(job: Job, end: StrippedFor, usual: Traced<number>): Traced<number> {
  const { part, spec, clamped = false } = end;
  const own = crimpOn(job, part)?.strip;
  const asked = spec?.strip;
  const byPart = own === undefined ? null : given(own, `the data of ${part}`);
  const byPort = asked === undefined ? null : given(asked, "the port's data");
  return (clamped ? (byPort ?? byPart) : (byPart ?? byPort)) ?? usual;
}

/** What is crimped on an end, where it is a terminal of the catalogue. */
function crimpOn({ parts }: Pick<Job, 'parts'>, part: string | null): PartOf<'terminal'> | null {
  const terminal = part === null ? undefined : parts[part];
  return terminal?.kind === 'terminal' ? terminal : null;
}

function given(value: number, citation: string): Traced<number> {
  return traced(value, 'm', { origin: 'given', rule: 'strip-length', citation });
}

/** The part on an end whose strip length neither it nor its port tells; none where one of them does, or nothing is on. */
export function silentBarrel({ end: { part }, workings }: PreparedEnd): string[] {
  const strip = workings?.stripM;
  return part === null || strip === undefined || strip.trace.origin === 'given' ? [] : [part];
}

/** One note for all parts of the job on whose strip length no maker speaks. */
export function remarkSilentBarrels(parts: readonly string[], book: PlanBook): void {
  const names = [...new Set(parts)].toSorted();
  const [first] = names;
  if (first === undefined) return;
  const one = names.length === 1;
  book.remark(
    {
      rule: 'strip-length-assumed',
      level: 'note',
      of: names,
      message: `${listed(names)} ${one ? 'does not tell' : 'do not tell'} how far a wire is stripped for ${one ? 'it' : 'them'}, nor do their ports: the strip lengths on the sheets are common practice`,
      remedy: `measure how deep the wire goes into the barrel or the sleeve, and write it as strip: of ${one ? 'the part' : 'each part'}, such as ${first}: { strip: 18 mm }`,
    },
    { path: `/parts/${first}`, file: 'part' },
  );
}
