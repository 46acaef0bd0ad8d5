import type { Finding } from '../model/finding.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import type { Remark } from '../model/remark.ts';
import type { Job } from '../model/resolved-job.ts';

/** What a rule may look at: the job as written, the plan as computed (its findings still empty). */
export interface Case {
  readonly job: Job;
  readonly plan: BuildPlan;
}

/** What a rule says: a remark, and where its subject was written (a JSON Pointer into the job file). */
export interface Verdict extends Omit<Remark, 'rule'> {
  readonly path: string;
  /** The finding's rule id where one rule has several: the rule's own id otherwise. */
  readonly rule?: string;
  /** Which file the path points into; the job's own where left out. */
  readonly file?: 'job' | 'vehicle' | 'shop';
}

/** One rule of the trade. Pure: the same case gives the same verdicts. */
export interface Rule {
  /** Kebab-case, such as `fuse-over-conductor`: stands in findings, in the guide and in tests. */
  readonly id: string;
  /** What it asks, in one plain sentence. */
  readonly asks: string;
  judge(about: Case): readonly Verdict[];
}

/** A verdict as a finding, with its place looked up. */
export function findingOf(rule: Rule, verdict: Verdict, job: Job): Finding {
  const { path, file = 'job', of, rule: own, ...rest } = verdict;
  const place = { job: job.place, vehicle: job.vehiclePlace, shop: job.shopPlace }[file];
  return { rule: own ?? rule.id, where: place(path), related: [...of], ...rest };
}
