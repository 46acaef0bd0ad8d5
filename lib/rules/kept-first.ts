import type { ReadJob } from '../model/content/resolved-job.ts';
import { keysOf } from '../model/place.ts';
import type { RemarkBody } from '../model/remark.ts';
import { keptKindOf, keptKinds } from '../plan/keeping/kept-values.ts';
import { listed } from './words.ts';

/**
 * A remedy that can be done as it is told: where it asks for a line of what is only proposed, what writes that into the
 * job file comes with it. A line alone would lack all else that the entry must say.
 */
export function withKeptFirst<R extends RemarkBody>(remark: R, job: Pick<ReadJob, 'file' | 'proposals'>): R {
  const asked = [...(remark.writesAt ?? []), ...advisedAt(remark)];
  const proposed = asked.map((path) => proposedAt(job, path)).filter((path) => path !== null);
  if (proposed.length === 0) return remark;
  const names = [...new Set(proposed.map((path) => path.at(-1) ?? ''))];
  const words = new Set(proposed.map((path) => `${keptKindOf(path)}.${path[1]}`));
  const kinds = new Set(proposed.map(keptKindOf));
  const asksFor = words.size <= mostByName ? [...words] : keptKinds.filter((kind) => kinds.has(kind));
  const command = `rackleaf keep ${job.file.id} ${asksFor.join(' ')} --yes`;
  const one = names.length === 1;
  return {
    ...remark,
    remedy: `${remark.remedy}; ${listed(names)} ${one ? 'is' : 'are'} only proposed so far: \`${command}\` writes ${one ? 'it' : 'them'} into the job, and the line goes there`,
  };
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
