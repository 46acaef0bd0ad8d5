import type { Finding, Level } from '../model/finding.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import type { Remark } from '../model/remark.ts';
import type { Job } from '../model/resolved-job.ts';
import type { Mark } from '../model/trace.ts';

/** What a rule may look at: the job as written, the plan as computed (its findings still empty). */
export interface Case {
  readonly job: Job;
  readonly plan: BuildPlan;
}

/** Where a subject was written: a JSON Pointer into one of the files. */
export interface Spot {
  readonly path: string;
  /** Which file the path points into; the job's own where left out. */
  readonly file?: 'job' | 'vehicle' | 'shop';
}

/** What a rule says: a remark, and where its subject was written. */
export interface Verdict extends Omit<Remark, 'rule'>, Spot {
  /**
   * Rules of computations that say the same with the reason: the verdict gives way to a remark of one of them that
   * is as grave and names its subject.
   */
  readonly givesWayTo?: readonly string[];
}

/** One rule of the trade. Pure: the same case gives the same verdicts. */
export interface Rule {
  /** Kebab-case, such as `fuse-over-conductor`: stands in findings, in the guide and in tests. */
  readonly id: string;
  /** What it asks, in one plain sentence. */
  readonly asks: string;
  /** The published source of what it asks, or `common practice, no source`. */
  readonly source: string;
  readonly mark?: Mark;
  /** The levels that its verdicts may have. */
  readonly levels: readonly Level[];
  judge(about: Case): readonly Verdict[];
}

/** A remark or verdict under its rule's id as a finding, with its place looked up. */
export function findingOf(remark: Remark, { path, file = 'job' }: Spot, job: Job): Finding {
  const { of, ...rest } = remark;
  const place = { job: job.place, vehicle: job.vehiclePlace, shop: job.shopPlace }[file];
  return { ...rest, where: place(path), related: [...of] };
}
