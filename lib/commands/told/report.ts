import { everyFinding, type Finding } from '../../model/finding.ts';
import { acceptedText, findingFigures } from '../../model/finding-text.ts';
import { placeText } from '../../model/place.ts';
import { isStopped } from '../../model/plan/index.ts';
import { problemText } from '../../model/problem.ts';
import { handOverLacks, lackText } from '../../publish/packet/packet-lacks.ts';
import type { Effects } from '../effects.ts';
import type { FailedJob, LoadedJob, LoadedShop } from '../shop/load-shop.ts';

/** A finding as the command line prints it: what it says, its figures, what to do, where it comes from. */
export function findingText(finding: Finding): string {
  const { where, level, message, remedy, rule, source, accepted } = finding;
  return [
    `${placeText(where)}: ${level}${accepted ? ', accepted' : ''}: ${message}`,
    ...figuresText(finding),
    ...(finding.data ?? []).map((place) => `  figure from ${placeText(place)}`),
    `  to do: ${remedy}`,
    ...(accepted ? [`  ${acceptedText(accepted)} (${placeText(accepted.where)})`] : acceptText(finding)),
    `  rule: ${rule} (${source})`,
    ...followsText(finding),
  ].join('\n');
}

/** What only follows from a finding, one line each under it: it goes with what it follows from, and is not accepted for itself. */
function followsText({ follows = [] }: Finding): string[] {
  if (follows.length === 0) return [];
  return [
    `  from it ${follows.length === 1 ? 'follows' : 'follow'}, gone once it is mended:`,
    ...follows.map(
      (one) =>
        `    ${one.level}${one.accepted ? ', accepted' : ''}: ${one.message} (${one.rule}; ${placeText(one.where)})`,
    ),
  ];
}

function figuresText(finding: Finding): string[] {
  const figures = Object.entries(findingFigures(finding)).map(([name, figure]) => `${name} ${figure}`);
  return figures.length === 0 ? [] : [`  ${figures.join(', ')}`];
}

/** What to write under `accepted:` of the job to let a caution stand. */
function acceptText(finding: Finding): string[] {
  const { level, rule, related } = finding;
  const [subject] = related;
  if (level !== 'caution' || subject === undefined) return [];
  const seen = Object.entries(findingFigures(finding)).map(
    ([name, figure]) => ` ${name}: ${yamlText(figure)},`,
  );
  return [
    `  or accept it, under accepted: of the job: - { finding: ${rule}, of: ${yamlText(subject)},${seen.join('')} reason: , by: }`,
  ];
}

/** A text within braces of YAML: a name and a figure with its unit as they are, all else in quotes. */
function yamlText(text: string): string {
  const plain = /^(?:[A-Za-z][\w.+-]*|-?[\d.]+ [A-Za-z%][\w %/]*)$/;
  return plain.test(text) ? text : JSON.stringify(text);
}

/** Tells every problem of the input. */
export function tellProblems({ problems }: Pick<LoadedShop, 'problems'>, effects: Effects): void {
  for (const problem of problems) effects.tell(problemText(problem));
}

/** Tells of every job that broke down: the others are made all the same. */
export function tellFailed({ failed }: Pick<LoadedShop, 'failed'>, effects: Effects): void {
  for (const job of failed) effects.tell(failedText(job));
}

/** What is told of a job that broke down. */
export function failedText({ id, failure }: FailedJob): string {
  return `${id} was left out, since it could not be made. ${failure}`;
}

/** One line on where a job stands. */
export function standingText({ job, plan, released, changes }: LoadedJob): string {
  const count = (level: Finding['level']) =>
    plan.findings.filter((finding) => finding.level === level).length;
  const every = everyFinding(plan.findings);
  const accepted = every.filter((finding) => finding.accepted !== undefined).length;
  const folded = every.length - plan.findings.length;
  const cautions = `${count('caution')} caution${accepted > 0 ? ` (${accepted} accepted)` : ''}`;
  const numbers = `${count('stop')} stop, ${cautions}, ${count('note')} note${folded > 0 ? `, ${folded} that only follow` : ''}`;
  const standing = isStopped(plan)
    ? 'DRAFT, stopped'
    : released
      ? `${plan.job.status}, frozen${job.status === 'draft' ? ' (its file says draft: write status: released, or raise revision: to plan anew)' : ''}`
      : plan.job.status;
  const differs = changes.length > 0 ? `; computed differently today in ${changes.length} places` : '';
  return `${job.id}, revision ${plan.job.revision}: ${standing}; ${numbers}${differs}`;
}

/** Tells where a released revision would be computed differently today. It stays as it was released. */
export function tellChanges({ job, plan, changes }: LoadedJob, effects: Effects): void {
  if (changes.length === 0) return;
  const where = placeText(job.revisionAt);
  effects.tell(`${where}: revision ${plan.job.revision} is released, but would be computed otherwise today:`);
  for (const change of changes) effects.tell(`  ${change}`);
  effects.tell('  to do: build what was released; for what today asks, raise the revision and release it');
}

/** Tells what of the revision that a job is built on is otherwise now; the rest stays as it is built. */
export function tellBuilt({ job, plan: { built } }: LoadedJob, effects: Effects): void {
  if (!built) return;
  const { revision, unchanged, changed } = built;
  effects.tell(
    `${placeText(job.revisionAt)}: built on revision ${revision}: ${unchanged.length} things stay as they are built, ${changed.length} are otherwise`,
  );
  for (const { id, was, is } of changed) effects.tell(`  ${id}: ${was}, now ${is}`);
}

/** Tells why no packet is made of a job, with the lines of its record; false where it may be made. */
export function tellNoPacket({ job, plan }: Pick<LoadedJob, 'job' | 'plan'>, effects: Effects): boolean {
  const lacks = handOverLacks(plan);
  for (const lack of lacks) {
    const lines = lack.lines.length === 0 ? '' : ` ${lack.lines.join(', ')}`;
    effects.tell(`${job.id}: no packet is made: ${lackText(lack)}${lines}`);
  }
  return lacks.length > 0;
}

/** What sheets of a released revision are made from, where that differs from today's plan. */
export function tellFrozen({ plan, released }: LoadedJob, effects: Effects): void {
  if (released) effects.tell(`from the frozen plan of revision ${plan.job.revision}`);
}
