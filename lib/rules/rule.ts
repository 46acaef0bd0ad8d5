import type { ReadJob } from '../model/content/resolved-job.ts';
import type { AdvisedLine, Finding } from '../model/finding.ts';
import { type FindingId, findingEntry, type LevelOf } from '../model/findings/index.ts';
import type { Source } from '../model/findings/source.ts';
import type { Place } from '../model/place.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import type { Advice, JoinedRemark, RemarkBody, Whereabouts } from '../model/remark.ts';
import { flowText } from '../read/yaml/write-value.ts';
import { type AskingFinding, proposedOf } from './kept-first.ts';

/** What a rule may look at: the job as written, the plan as computed (its findings still empty). */
export interface Case {
  readonly job: ReadJob;
  readonly plan: BuildPlan;
}

/** Where a subject was written: a JSON Pointer into one of the files. */
export type Spot = Whereabouts;

/** What a rule says: a remark, and where its subject was written. */
export interface Verdict<Id extends FindingId> extends RemarkBody, Spot {
  readonly level: LevelOf<Id>;
  /**
   * Findings of computations that say the same with the reason: the verdict gives way to a remark of one of them that
   * is as grave and names its subject.
   */
  readonly givesWayTo?: readonly FindingId[];
  /** What the job is to say at a path of it, where no other remedy can be meant. */
  readonly instead?: { readonly path: string; readonly text: string };
}

/** A rule for one finding. */
export interface RuleOf<Id extends FindingId> {
  /** Its id in the catalogue, which has what it asks, its levels and its source. */
  readonly id: Id;
  judge(about: Case): readonly Verdict<Id>[];
}

/** One rule of the trade. Pure: the same case gives the same verdicts. */
export type Rule<Id extends FindingId = FindingId> = Id extends FindingId ? RuleOf<Id> : never;

/**
 * A remark or verdict under its id as a finding, with its place looked up; source and mark are those of the catalogue
 * where it states none.
 */
export function findingOf(remark: JoinedRemark, spot: Spot, job: ReadJob): AskingFinding {
  const { advice = [] } = remark;
  const keepFirst = proposedOf(remark, job);
  return {
    ...findingAt(remark, placeOf(spot, job)),
    ...(advice.length > 0 && { advice: advice.map((one) => linesOf(one, job)) }),
    ...(keepFirst.length > 0 && { keepFirst }),
  };
}

/** What is to be written, with the files that it is written in. */
function linesOf(advice: Advice, job: ReadJob): AdvisedLine[] {
  return advice.map(({ value, ...spot }) => ({
    file: placeOf(spot, job).file,
    path: spot.path,
    text: flowText(value),
  }));
}

/** The same of a place that is known, in whatever file. */
export function findingAt(remark: JoinedRemark, where: Place): Finding {
  const { of, advice: _, writesAt: __, ...rest } = remark;
  return { ...rest, ...sourceOf(remark), where, related: [...of] };
}

/** File, line and column of a spot. */
export function placeOf({ path, file = 'job' }: Spot, job: ReadJob): Place {
  return { job: job.place, vehicle: job.vehiclePlace, shop: job.shopPlace, part: job.partPlace }[file](path);
}

/** What a remark cites: its own source with its own mark, or the catalogue's, under the remark's mark if it has one. */
function sourceOf({ rule, source, mark }: JoinedRemark): Source {
  const entry = findingEntry(rule);
  if (source !== undefined) return { source, ...(mark && { mark }) };
  const shown = mark ?? entry.mark;
  return { source: entry.source, ...(shown && { mark: shown }) };
}
