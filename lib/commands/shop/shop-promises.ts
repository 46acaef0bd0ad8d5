import type { PromisedTo, ReleasedTakes } from '../../model/content/promised.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import type { Keep } from '../../model/keep.ts';
import { standingJob, standingStep } from '../../read/job-standing.ts';
import { baseName } from '../../read/read-content.ts';
import { type DatedPromise, inTurn, promisedBefore, promiseOf } from '../../shelf/promising.ts';
import type { FrozenPlan } from './frozen-plans.ts';

/** What the released jobs of a shop that are not built in yet take from its shelf. */
export interface ShopPromises {
  /** All of it, in its turn. */
  readonly all: readonly PromisedTo[];
  /**
   * What stands before a job. A released revision is frozen: of one that is not planned anew nothing is asked, so that
   * no release makes it be read again.
   */
  readonly before: (job: string, plansReleased: boolean) => readonly PromisedTo[];
  /** What a revision takes that is drawn, as if it were released: beside what is built in of earlier ones. */
  readonly ofDrawn: (job: string, drawn: ReleasedTakes) => PromisedTo | null;
}

/**
 * The promises of a shop. A job whose file is gone has none; one whose file can't be read keeps its own.
 *
 * @param files Files of jobs, or what stands for them where only their standing is asked.
 */
export function shopPromises(
  frozen: readonly FrozenPlan[],
  files: readonly SourceFile[],
  keep: Keep,
): ShopPromises {
  const released = new Map<string, FrozenPlan[]>();
  for (const one of frozen) released.set(one.job, [...(released.get(one.job) ?? []), one]);
  const standings = new Map(
    files
      .map((file) => [standingJob(file.path) ?? baseName(file.path), file] as const)
      .filter(([job]) => released.has(job))
      .map(([job, file]) => [job, keep(standingStep, file)] as const),
  );
  const releasedOf = (job: string) => (released.get(job) ?? []).map(({ facts }) => facts);
  const all = inTurn(
    [...standings].flatMap(([job, standing]): DatedPromise[] => {
      const promise = promiseOf(job, releasedOf(job), standing);
      return promise ? [promise] : [];
    }),
  );
  return {
    all,
    before: (job, plansReleased) => {
      const at = standings.get(job)?.revision;
      const own = released.get(job)?.find(({ revision }) => revision === at);
      if (own && !plansReleased) return [];
      return promisedBefore(all, job, own?.facts.issuedOn ?? null);
    },
    ofDrawn: (job, drawn) => {
      const standing = standings.get(job) ?? { revision: drawn.revision, status: null, revisions: [] };
      return promiseOf(job, [...releasedOf(job), drawn], standing);
    },
  };
}
