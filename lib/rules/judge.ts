import type { ReadJob } from '../model/content/resolved-job.ts';
import type { Finding } from '../model/finding.ts';
import type { FindingId } from '../model/findings/index.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import type { PlacedRemark } from '../model/remark.ts';
import { scalarText } from '../read/yaml/write-value.ts';
import { withAcceptances } from './accepted.ts';
import { rules } from './all-rules.ts';
import { withAssumed } from './assumed.ts';
import { withData, withWritten } from './data-places.ts';
import { compare, rank } from './finding-order.ts';
import { withFolded } from './folding/folding.ts';
import { type AskingFinding, withKeptFirst } from './kept-first.ts';
import { findingOf, type Rule, type Verdict } from './rule.ts';

interface Judged {
  readonly finding: AskingFinding;
  readonly givesWayTo: readonly string[];
}

/** A verdict under the id of its rule. */
function judged({ id }: Rule, verdict: Verdict<FindingId>, job: ReadJob): Judged {
  const { path, file, givesWayTo = [], instead, ...rest } = verdict;
  const finding = findingOf({ rule: id, ...rest }, { path, ...(file && { file }) }, job);
  const span = instead && job.span(instead.path);
  return {
    finding:
      span && instead
        ? { ...finding, edit: { file: job.place('').file, ...span, text: scalarText(instead.text) } }
        : finding,
    givesWayTo,
  };
}

/**
 * True where a remark speaks for a verdict: it is at least as grave, names the same subject, and comes from the same
 * rule or from one that the verdict gives way to. No stop is lost by it.
 */
function speaksFor(remark: Finding, { finding, givesWayTo }: Judged): boolean {
  const [subject = ''] = finding.related;
  if (rank(remark.level) > rank(finding.level) || !remark.related.includes(subject)) return false;
  return remark.rule === finding.rule || givesWayTo.includes(remark.rule);
}

/** True where a graver verdict says the same as a remark of a rule that it could have given way to. */
function isOutspoken(remark: Finding, { finding, givesWayTo }: Judged): boolean {
  return (
    givesWayTo.includes(remark.rule) &&
    rank(finding.level) < rank(remark.level) &&
    remark.related.every((subject) => finding.related.includes(subject))
  );
}

function withoutDoubles(findings: readonly AskingFinding[]): AskingFinding[] {
  const seen = new Set<string>();
  return findings.filter((finding) => {
    const { rule, level, where, related, message } = finding;
    const key = JSON.stringify([rule, level, where, related, message]);
    return !seen.has(key) && seen.add(key);
  });
}

/**
 * Judges a plan by every rule and by what its computations remarked: gravest first, then by place, rule and subject,
 * exact doubles once, what the job accepts marked so, what has to be kept first told in full once, what only follows from
 * another folded under it. The same job, plan and remarks, in whatever order, give the same list.
 */
export function judge(job: ReadJob, plan: BuildPlan, remarks: readonly PlacedRemark[]): Finding[] {
  const remarked = remarks.map(({ remark, ...spot }) => findingOf(remark, spot, job));
  const found = rules.flatMap((rule) =>
    rule.judge({ job, plan }).map((verdict) => judged(rule, verdict, job)),
  );
  const own = found.filter((one) => !remarked.some((remark) => speaksFor(remark, one)));
  const weighty = remarked.filter((remark) => !own.some((one) => isOutspoken(remark, one)));
  const all = [...weighty, ...own.map(({ finding }) => finding)].map((one) => withAssumed(one, plan));
  const listed = withoutDoubles(withAcceptances(all, job).toSorted(compare));
  return withFolded(
    withKeptFirst(listed, job.file.id).map((finding) => withWritten(withData(finding, job), job)),
    { job, plan },
  );
}
