import { createHash } from 'node:crypto';
import type { JobStanding } from '../../model/content/promised.ts';
import { computeAnew } from '../../model/keep.ts';
import { frozenAt, revisionTurn } from '../../read/frozen-file.ts';
import { standingFile, standingStep } from '../../read/job-standing.ts';
import { promisingRevisions } from '../../shelf/promising.ts';
import type { Look, SeenFile } from './file-looks.ts';
import { jobFileOf, jobsIn } from './scopes.ts';

/** Gives the files by which other jobs take from the shelf that a job is planned with. */
export type PromisingTo = (job: string) => readonly SeenFile[];

interface Frozen {
  readonly revision: string;
  readonly file: SeenFile;
}

/**
 * The files by which released jobs take from the shelf: their frozen plans, and how far each job is. An edit of anything
 * else in a job asks for no page of another. Each job file is read once for what it says.
 */
export class PromisingFiles {
  readonly #standings = new WeakMap<SeenFile, JobStanding>();

  in(look: Look): PromisingTo {
    const frozen = frozenIn(look);
    const files = new Map(look.files.map((file) => [file.path, file]));
    const standings = new Map(
      jobsIn(look).flatMap((job) => {
        const file = frozen.has(job) ? files.get(jobFileOf(job)) : undefined;
        return file ? [[job, this.#standing(file)] as const] : [];
      }),
    );
    const promising = [...standings].flatMap(([job, standing]) => {
      const found = promisingRevisions(frozen.get(job) ?? [], standing);
      return found ? [{ job, files: [seenStanding(job, standing), ...found.map(({ file }) => file)] }] : [];
    });
    return (job) => {
      const own = standings.get(job);
      // What is released is shown as it was frozen, whatever was promised since.
      if (frozen.get(job)?.some(({ revision }) => revision === own?.revision)) return [];
      return promising.filter((one) => one.job !== job).flatMap((one) => one.files);
    };
  }

  #standing(file: SeenFile): JobStanding {
    const known = this.#standings.get(file);
    if (known) return known;
    const read = standingStep.compute({ path: file.path, text: file.text ?? '' }, computeAnew);
    this.#standings.set(file, read);
    return read;
  }
}

/** The frozen plans of each job, oldest revision first. */
function frozenIn({ files }: Look): ReadonlyMap<string, readonly Frozen[]> {
  const all = files
    .flatMap((file) => {
      const of = frozenAt(file.path);
      return of ? [{ ...of, file }] : [];
    })
    .toSorted((a, b) => (revisionTurn(a.revision) < revisionTurn(b.revision) ? -1 : 1));
  const frozen = new Map<string, Frozen[]>();
  for (const { job, ...one } of all) frozen.set(job, [...(frozen.get(job) ?? []), one]);
  return frozen;
}

function seenStanding(job: string, standing: JobStanding): SeenFile {
  const { path, text } = standingFile(job, standing);
  return { path, text, digest: createHash('sha256').update(text).digest('hex'), fault: null };
}
