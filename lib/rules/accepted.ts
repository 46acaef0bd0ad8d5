import type { JobAccepted } from '../model/content/job.ts';
import type { ReadJob } from '../model/content/resolved-job.ts';
import type { Finding } from '../model/finding.ts';
import { findingFigure, isFigure } from '../model/finding-text.ts';
import { pointer } from '../model/place.ts';
import type { PlacedRemark, Remark } from '../model/remark.ts';
import type { AskingFinding } from './kept-first.ts';
import { findingOf } from './rule.ts';
import { listed } from './words.ts';

/**
 * The findings, each caution that the job accepts at its present figures marked so, and what is to be said of the
 * acceptances: that a stop can't be accepted, that a figure has changed, that nothing is found any more.
 */
export function withAcceptances(findings: readonly AskingFinding[], job: ReadJob): AskingFinding[] {
  const { accepted } = job.file;
  const marked = findings.map((finding): AskingFinding => {
    const k = accepted.findIndex((one) => isAbout(one, finding) && isSeen(one, finding));
    const own = accepted[k];
    if (finding.level !== 'caution' || !own) return finding;
    const { by, reason, value, limit } = own;
    const where = job.place(pointer(['accepted', String(k)]));
    const seen = { ...(value !== undefined && { value }), ...(limit !== undefined && { limit }) };
    return { ...finding, accepted: { by, reason, ...seen, where } };
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

/**
 * A finding is accepted at both of its figures, and one without them as such: the demand may stand in either, and what
 * is allowed may fall while what is drawn stays.
 */
function isSeen(written: JobAccepted, { value, limit, unit }: Finding): boolean {
  return isSeenFigure(written.value, value, unit, limit) && isSeenFigure(written.limit, limit, unit, value);
}

function isSeenFigure(
  written: string | undefined,
  figure: number | string | undefined,
  unit: string | undefined,
  against: number | string | undefined,
): boolean {
  if (figure === undefined) return written === undefined;
  return written !== undefined && isFigure(written, figure, unit, against);
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
      remedy: `look at it again; if it may stay, write ${figuresText(changed)} here`,
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

/** Which of the two figures is another than was seen, the value first. */
function changedText(written: JobAccepted, { value, limit, unit }: Finding): string {
  return isSeenFigure(written.value, value, unit, limit)
    ? changedFigure('limit', written.limit, textOf(limit, unit, value))
    : changedFigure('value', written.value, textOf(value, unit, limit));
}

function changedFigure(
  which: 'value' | 'limit',
  written: string | undefined,
  now: string | undefined,
): string {
  const against = which === 'limit' ? 'against a limit of' : 'at';
  if (now === undefined) return `was accepted ${against} ${written}, but tells no ${which}`;
  if (written === undefined) return `is accepted without the ${which} that was seen, ${now}`;
  return which === 'limit'
    ? `was accepted ${against} ${written}, and its limit is ${now} now`
    : `was accepted ${against} ${written}, and is ${now} now`;
}

/** What to write under the acceptance, as the list prints the figures. */
function figuresText({ value, limit, unit }: Finding): string {
  const [own, against] = [textOf(value, unit, limit), textOf(limit, unit, value)];
  if (own === undefined && against === undefined) return 'neither value: nor limit:';
  return listed([
    own === undefined ? 'no value:' : `value: ${own}`,
    against === undefined ? 'no limit:' : `limit: ${against}`,
  ]);
}

function textOf(
  figure: number | string | undefined,
  unit: string | undefined,
  against: number | string | undefined,
): string | undefined {
  return figure === undefined ? undefined : findingFigure(figure, unit, against);
}
