import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { audioSections } from './audio.ts';
import { boardSections } from './boards.ts';
import { roundedDigest } from './digest.ts';
import { powerSections } from './power.ts';
import { wiringSections } from './wiring.ts';
import { counted, listed, type Section } from './words.ts';
import { workSections } from './work.ts';

/**
 * A plan in words, to be read as a diff: a line for each wire, fuse, channel, placement, finding and so on, rounded
 * as a tape or a meter would show it. What the words leave out is held by a digest of each part of the plan.
 */
export function planSummary(plan: BuildPlan): string {
  return [
    headLines(plan),
    ...[
      findings(plan),
      ...wiringSections(plan),
      ...powerSections(plan),
      ...audioSections(plan),
      ...boardSections(plan),
      ...workSections(plan),
      digests(plan),
    ].map(({ heading, lines }) => [heading, ...lines.map((line) => `  ${line}`)]),
  ]
    .map((lines) => `${lines.join('\n')}\n`)
    .join('\n');
}

function headLines({ job, vehicle, items, passes }: BuildPlan): string[] {
  const given = items.filter(({ origin }) => origin === 'job').length;
  return [
    `${job.id}: ${job.title}`,
    listed(`revision ${job.revision}`, job.status, vehicle.title),
    `${counted(given, 'item')} of the job, ${items.length - given} of the vehicle; ${counted(passes, 'round')} between size and length`,
  ];
}

function findings({ findings: found }: BuildPlan): Section {
  return {
    heading: 'Findings',
    lines: found.map(
      ({ level, rule, related, message }) => `${level} ${rule}, ${related[0] ?? 'the job'}: ${message}`,
    ),
  };
}

function digests(plan: BuildPlan): Section {
  const parts = Object.entries(plan).toSorted(([a], [b]) => (a < b ? -1 : 1));
  return {
    heading: 'Digests of the parts of the plan, numbers rounded to six digits',
    lines: parts.map(([name, value]) => `${name} ${roundedDigest(value)}`),
  };
}
