import type { ProposalDoubt } from '../model/content/proposal.ts';
import type { Job } from '../model/content/resolved-job.ts';
import type { SourceFile } from '../model/content/source-file.ts';
import { problemText } from '../model/problem.ts';
import { type KeepEdits, keepEdits } from '../plan/keeping/keep-edits.ts';
import { type KeptName, namesOfKind, valuesNamed } from '../plan/keeping/kept-names.ts';
import { type KeptKind, type KeptValue, keptKinds, keptValues } from '../plan/keeping/kept-values.ts';
import { readContent } from '../read/read-content.ts';
import { remedyFor } from '../read/report.ts';
import { splice } from '../read/yaml/splice.ts';
import { readYaml } from '../read/yaml/yaml.ts';
import { withCrew } from './crew/with-crew.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';
import { loadShop, missingJob, missingStatus } from './shop/load-shop.ts';
import { tellProblems } from './told/report.ts';
import { writeShown } from './write-shown.ts';

/** What of a job is kept, and whether it is written without a question. */
export interface KeepWish {
  readonly job: string;
  readonly kinds: readonly KeptKind[];
  /** Single things of a kind: a link, a label. */
  readonly names?: readonly KeptName[];
  readonly yes: boolean;
}

/**
 * `rackleaf keep JOB [KIND | KIND.NAME ...]`: writes what the plan proposes into the job file, shown as a difference first. Nothing of
 * the plan changes by it; what is kept does not move when something else is changed.
 */
export async function keep(
  effects: Effects,
  { job: jobId, kinds, names = [], yes }: KeepWish,
): Promise<ExitStatus> {
  const shop = await withCrew(effects, (crew) =>
    loadShop(effects, crew, { only: (id) => id === jobId, compares: false }),
  );
  const [loaded] = shop.jobs;
  if (!loaded) {
    tellProblems(shop, effects);
    effects.tell(missingJob(shop, jobId));
    return missingStatus(shop);
  }
  if (loaded.released) {
    effects.tell(
      `${jobId}, revision ${loaded.job.revision}, is released: its plan is frozen, and nothing of it moves; raise the revision to go on from it`,
    );
    return exitStatus.inputErrors;
  }
  const path = `content/jobs/${jobId}.yaml`;
  const file = shop.files.find((one) => one.path === path);
  const job = shop.content().jobs.find(({ id }) => id === jobId);
  const doc = file ? readYaml(path, file.text).value : null;
  if (!file || !job || !doc) throw new Error(`${path} was planned, but can not be read.`);
  const values = keptValues(job, loaded.plan);
  const strange = names.map((name) => strangeName(values, name)).filter((one) => one !== null);
  if (strange.length > 0) {
    for (const one of strange) effects.tell(`keep: ${one}`);
    return exitStatus.inputErrors;
  }
  const single = valuesNamed(values, names);
  const some = keepEdits(doc, values, { kinds, single }, loaded.plan);
  const isWhole = single.size === 0 || leavesOthers(shop.files, file, some, job);
  if (!isWhole)
    effects.tell(
      'links: all are kept, since a job that writes some of them would have others than it has now',
    );
  const edits = isWhole ? some : keepEdits(doc, values, { kinds: [...kinds, 'links'], single }, loaded.plan);
  const after = kept(shop.files, file, edits, jobId);
  tellKept(effects, edits);
  if (after === file.text) {
    effects.tell(`${path} says all of it already`);
    return exitStatus.done;
  }
  return writeShown(effects, { path, before: file.text, after }, yes);
}

/** What is said of a name of which nothing is proposed; null where something is. */
function strangeName(values: readonly KeptValue[], { kind, name }: KeptName): string | null {
  const known = namesOfKind(values, kind);
  if (known.includes(name)) return null;
  return `nothing of ${kind} is proposed for "${name}"; ${remedyFor(name, known)}`;
}

/** True where the job with some of its links written has the same links as before, from end to end: the rest is proposed as it was. */
function leavesOthers(
  files: readonly SourceFile[],
  file: SourceFile,
  { edits }: KeepEdits,
  job: Pick<Job, 'id' | 'links'>,
): boolean {
  const text = splice(file.text, edits);
  if (typeof text !== 'string') return false;
  const { jobs } = readContent(files.map((one) => (one.path === file.path ? { ...one, text } : one)));
  const after = jobs.find(({ id }) => id === job.id);
  return after !== undefined && wiringOf(after) === wiringOf(job);
}

/** All links of a job with their ends, in the order of their names. */
function wiringOf({ links }: Pick<Job, 'links'>): string {
  const told = links.map(({ id, from, to }) => [id, from.device, from.terminal, to.device, to.terminal]);
  return JSON.stringify(told.toSorted(([a = ''], [b = '']) => (a < b ? -1 : 1)));
}

/** The job file with what is kept; what could not be read back would be a bug, and is not written. */
function kept(files: readonly SourceFile[], file: SourceFile, { edits }: KeepEdits, jobId: string): string {
  const text = splice(file.text, edits);
  if (typeof text !== 'string') throw new Error(`${file.path} can not be written: ${text.fault}.`);
  const { jobs, problems } = readContent(
    files.map((one) => (one.path === file.path ? { ...one, text } : one)),
  );
  const own = problems.filter(({ where }) => where.file === file.path);
  if (own.length > 0 || !jobs.some(({ id }) => id === jobId))
    throw new Error(`${file.path} could not be read with what is kept.\n${own.map(problemText).join('\n')}`);
  return text;
}

/** What was proposed in doubt: a finding asked for it, and no longer does once the job says it. */
const doubts: Readonly<Record<ProposalDoubt, string>> = {
  'not-measured': 'the length is assumed; measure it, and write what you measure',
  'plays-nothing': 'left open since nothing plays there; write the true reason, or what it drives',
  'bass-pair-chosen':
    'the bass takes the front pair of the source; write signal: rear at the subwoofer where it is to play the rear one',
  'fader-moves-bass': 'the fader of the source moves the bass; leave it in the middle',
};

function tellKept(effects: Effects, { kept: written, waiting, alongside }: KeepEdits): void {
  for (const kind of keptKinds) {
    const [own, left] = [written, waiting].map((list) => list.filter((one) => one.kind === kind).length);
    if (own) effects.tell(`${kind}: ${own}`);
    if (left)
      effects.tell(`${kind}: ${left} wait, since what they are of is proposed too: keep links as well`);
  }
  for (const [doubt, what] of Object.entries(doubts)) {
    const own = written.filter((one) => one.doubt === doubt).map(({ path }) => path[1]);
    if (own.length > 0) effects.tell(`look at ${own.join(', ')}: ${what}`);
  }
  if (alongside.length > 0)
    effects.tell(
      `kept with the links, since a job that writes its links proposes nothing else of its wiring: ${alongside.map(({ path }) => path.join('.')).join(', ')}`,
    );
}
