import type { JobAccepted } from '../model/content/job.ts';
import type { Job } from '../model/content/resolved-job.ts';
import type { Finding } from '../model/finding.ts';
import { findingFigure, isFigure } from '../model/finding-text.ts';
import { pointer } from '../model/place.ts';
import type { PlacedRemark, Remark } from '../model/remark.ts';
import { findingOf } from './rule.ts';

/**
 * The findings, each caution that the job accepts at its present value marked so, and what is to be said of the
 * acceptances: that a stop can't be accepted, that a value has changed, that nothing is found any more.
 */
export function withAcceptances(findings: readonly Finding[], job: Job): Finding[] {
  const { accepted } = job.file;
  const marked = findings.map((finding): Finding => {
    const k = accepted.findIndex((one) => isAbout(one, finding) && isSeen(one, finding));
    const own = accepted[k];
    if (finding.level !== 'caution' || !own) return finding;
    const { by, reason, value } = own;
    const where = job.place(pointer(['accepted', String(k)]));
    return { ...finding, accepted: { by, reason, ...(value !== undefined && { value }), where } };
  });
  const remarked = acceptanceRemarks(findings, accepted);
  return [...marked, ...remarked.map(({ remark, ...spot }) => findingOf(remark, spot, job))];
}

/** What is to be said of the acceptances of a job, by what is found. */
export function acceptanceRemarks(
  findings: readonly Finding[],
  accepted: readonly JobAccepted[],
): PlacedRemark[] {
  return accepted.flatMap((one, k): PlacedRemark[] => {
    const remark = judgeAcceptance(one, findings);
    return remark ? [{ remark, path: pointer(['accepted', String(k)]) }] : [];
  });
}

function isAbout({ finding: id, of }: JobAccepted, { rule, related }: Finding): boolean {
  return rule === id && related[0] === of;
}

/** A finding without a value is accepted as such; one with a value at that value. */
function isSeen({ value: written }: JobAccepted, { value, limit, unit }: Finding): boolean {
  if (value === undefined) return written === undefined;
  return written !== undefined && isFigure(written, value, unit, limit);
}

function judgeAcceptance(one: JobAccepted, findings: readonly Finding[]): Remark | null {
  const name = `${one.finding} of ${one.of}`;
  const about = findings.filter((finding) => isAbout(one, finding));
  const cautions = about.filter(({ level }) => level === 'caution');
  if (cautions.some((finding) => isSeen(one, finding))) return null;
  const [changed] = cautions;
  if (changed)
    return {
      rule: 'acceptance-outdated',
      level: 'note',
      of: [one.of],
      message: `${name} ${changedText(one, changed)}: it stands open again`,
      remedy: `look at it again; if it may stay, write ${valueText(changed)} here`,
    };
  if (about.some(({ level }) => level === 'stop'))
    return {
      rule: 'acceptance-of-stop',
      level: 'caution',
      of: [one.of],
      message: `${name} is a stop: it can't be accepted`,
      remedy: 'mend what stops the job, and take this acceptance out',
    };
  return {
    rule: 'acceptance-pointless',
    level: 'note',
    of: [one.of],
    message: `${name} is accepted, but ${about.length > 0 ? 'is only a note' : 'is not found any more'}`,
    remedy: 'take this acceptance out, or write finding: and of: as the list of findings has them',
  };
}

function changedText({ value: written }: JobAccepted, { value, limit, unit }: Finding): string {
  if (value === undefined) return `was accepted at ${written}, but tells no value`;
  const now = findingFigure(value, unit, limit);
  if (written === undefined) return `is accepted without the value that was seen, ${now}`;
  return `was accepted at ${written}, and is ${now} now`;
}

function valueText({ value, limit, unit }: Finding): string {
  return value === undefined ? 'no value:' : `value: ${findingFigure(value, unit, limit)}`;
}
