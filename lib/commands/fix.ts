import type { FileEdit } from '../model/finding.ts';
import type { Problem } from '../model/problem.ts';
import { type Edit, splice } from '../read/yaml/splice.ts';
import { readYaml } from '../read/yaml/yaml.ts';
import { withCrew } from './crew/with-crew.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';
import { type LoadedShop, loadShop } from './shop/load-shop.ts';
import { writeShown } from './write-shown.ts';

/** What a person alone may say: facts of the vehicle and of what was read, reasons, acceptances, what stays open. */
const ofPeople =
  /^\/(?:left-open|accepted|as-built|customer|notes|revisions)(?:\/|$)|\/(?:reason|reversed|after)(?:\/|$)/;

/**
 * `rackleaf check [JOB] --fix`: mends what can be meant in one way only, such as a decimal comma or a label that another
 * wire bears, shown first. What a person alone can know is never written.
 */
export async function fix(effects: Effects, jobId: string | null, yes: boolean): Promise<ExitStatus> {
  const shop = await withCrew(effects, (crew) =>
    loadShop(effects, crew, { only: (id) => jobId === null || id === jobId, compares: false }),
  );
  const byFile = certainEdits(shop, jobId);
  if (byFile.size === 0) {
    effects.tell('nothing is found that can be mended in one way only; rackleaf check tells what to do');
    return exitStatus.done;
  }
  let status: ExitStatus = exitStatus.done;
  for (const [path, edits] of byFile) {
    const before = shop.files.find((file) => file.path === path)?.text ?? '';
    const after = splice(before, edits);
    if (typeof after !== 'string') throw new Error(`${path} can not be mended: ${after.fault}.`);
    const written = await writeShown(effects, { path, before, after }, yes);
    if (written !== exitStatus.done) status = written;
  }
  return status;
}

/** The changes that nothing else can be meant by, by file, each place once. */
function certainEdits(
  { files, problems, jobs }: Pick<LoadedShop, 'files' | 'problems' | 'jobs'>,
  jobId: string | null,
): ReadonlyMap<string, readonly Edit[]> {
  const isAsked = ({ where }: Pick<Problem, 'where'>) =>
    jobId === null || where.file === `content/jobs/${jobId}.yaml`;
  const told = [
    ...problems.filter(isAsked),
    ...jobs.flatMap(({ plan, released }) =>
      released ? [] : plan.findings.filter(({ accepted }) => accepted === undefined),
    ),
  ];
  const byFile = new Map<string, Edit[]>();
  for (const { edit, where } of told) {
    if (!edit || where.file.startsWith('content/vehicles/') || ofPeople.test(where.path)) continue;
    const own = byFile.get(edit.file) ?? [];
    if (own.some((one) => one.start < edit.end && edit.start < one.end)) continue;
    if (stillReads(files.find(({ path }) => path === edit.file)?.text, edit))
      byFile.set(edit.file, [...own, edit]);
  }
  return byFile;
}

/** True where a file can be parsed as before once it is changed. */
function stillReads(text: string | undefined, edit: FileEdit): boolean {
  const after = text === undefined ? null : splice(text, [edit]);
  if (typeof after !== 'string') return false;
  return readYaml(edit.file, after).problems.length <= readYaml(edit.file, text ?? '').problems.length;
}
