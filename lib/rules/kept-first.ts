import type { ReadJob } from '../model/content/resolved-job.ts';
import type { Finding } from '../model/finding.ts';
import { keysOf } from '../model/place.ts';
import type { RemarkBody } from '../model/remark.ts';
import { keptKindOf, keptKinds } from '../plan/keeping/kept-values.ts';
import { listed } from './words.ts';

/** A finding with the entries of the job that its remedy tells a line of and that are only proposed so far. */
export interface AskingFinding extends Finding {
  readonly keepFirst?: readonly (readonly string[])[];
}

/** The entries that the remedy of a remark tells a line of, where the job does not have them and a rule proposes them. */
export function proposedOf(
  remark: RemarkBody,
  job: Pick<ReadJob, 'proposals'>,
): readonly (readonly string[])[] {
  const asked = [...(remark.writesAt ?? []), ...advisedAt(remark)];
  return asked.map((path) => proposedAt(job, path)).filter((path) => path !== null);
}

/**
 * Remedies that can be done as they are told: where one asks for a line of what is only proposed, what writes that into
 * the job file comes with it, told in full at the first of the list and by its word at the others. A line alone would
 * lack all else that the entry must say.
 */
export function withKeptFirst(findings: readonly AskingFinding[], id: string): Finding[] {
  const first = findings.findIndex(({ keepFirst = [] }) => keepFirst.length > 0);
  return findings.map(({ keepFirst = [], ...finding }, at): Finding => {
    if (keepFirst.length === 0) return finding;
    const asked = keptWords(keepFirst);
    const told = at === first ? toldInFull(keepFirst, asked, id) : `keep ${listed(asked)} first`;
    return { ...finding, remedy: `${finding.remedy}; ${told}` };
  });
}

function toldInFull(proposed: readonly (readonly string[])[], asked: readonly string[], id: string): string {
  const names = [...new Set(proposed.map((path) => path.at(-1) ?? ''))];
  const one = names.length === 1;
  return `${listed(names)} ${one ? 'is' : 'are'} only proposed so far: \`rackleaf keep ${id} ${asked.join(' ')} --yes\` writes ${one ? 'it' : 'them'} into the job, and the line goes there`;
}

/** What `rackleaf keep` is asked for: the entries by name, or by their kinds where they are many. */
function keptWords(proposed: readonly (readonly string[])[]): readonly string[] {
  const words = new Set(proposed.map((path) => `${keptKindOf(path)}.${path[1]}`));
  const kinds = new Set(proposed.map(keptKindOf));
  return words.size <= mostByName ? [...words] : keptKinds.filter((kind) => kinds.has(kind));
}

/** More entries than this are kept by their kind: a command is read at a glance. */
const mostByName = 3;

/** The entries of the job that a way out writes into. */
function advisedAt({ advice = [] }: RemarkBody): readonly (readonly string[])[] {
  return advice.flat().flatMap(({ path, file = 'job' }) => (file === 'job' ? [keysOf(path)] : []));
}

/** The whole entry that a path lies in or is, where the job does not have it and a rule proposes it. */
function proposedAt(
  { proposals }: Pick<ReadJob, 'proposals'>,
  path: readonly string[],
): readonly string[] | null {
  const whole = proposals.find(
    (one) => one.path.length >= 2 && one.path.every((key, at) => key === path[at]),
  );
  return whole?.path ?? null;
}
