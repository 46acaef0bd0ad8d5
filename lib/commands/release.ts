import type { SourceFile } from '../model/content/source-file.ts';
import { onAnyDisk } from '../model/file-name.ts';
import { type BuildPlan, isStopped } from '../model/plan/index.ts';
import { frozenPath } from '../read/frozen-file.ts';
import { splice } from '../read/yaml/splice.ts';
import { readYaml } from '../read/yaml/yaml.ts';
import { withCrew } from './crew/with-crew.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';
import type { FrozenPlan } from './shop/frozen-plans.ts';
import { loadShop, missingJob, missingStatus } from './shop/load-shop.ts';
import { findingText, tellProblems } from './told/report.ts';
import { replaceOrTell } from './write-shown.ts';

/**
 * `rackleaf release JOB`: refuses while a finding stops the job; otherwise lists the cautions that
 * stand and are not accepted, freezes the whole plan of the revision
 * beside the job and writes `status: released` into the job file. Nothing else of the file changes.
 */
export async function release(effects: Effects, jobId: string): Promise<ExitStatus> {
  const shop = await withCrew(effects, (crew) =>
    loadShop(effects, crew, { only: (id) => id === jobId, compares: false }),
  );
  const [loaded] = shop.jobs;
  if (shop.problems.length > 0 || !loaded) {
    tellProblems(shop, effects);
    if (!loaded) effects.tell(missingJob(shop, jobId));
    return missingStatus(shop);
  }
  const { revision } = loaded.job;
  if (loaded.released) {
    effects.tell(`${jobId}, revision ${revision}, is released already: raise the revision to change it`);
    return exitStatus.inputErrors;
  }
  const taken = sameFile(shop.frozen, jobId, revision);
  if (taken !== null) {
    effects.tell(
      `${jobId}: revision ${taken} is released, and ${revision} would be the same file on some disks: call it otherwise`,
    );
    return exitStatus.inputErrors;
  }
  if (isStopped(loaded.plan)) {
    const stops = loaded.plan.findings.filter(({ level }) => level === 'stop');
    for (const finding of stops) effects.tell(findingText(finding));
    effects.tell(`${jobId} is not released: ${stops.length} findings stop it`);
    return exitStatus.stopped;
  }
  const standing = loaded.plan.findings.filter(({ level, accepted }) => level === 'caution' && !accepted);
  for (const finding of standing) effects.tell(findingText(finding));
  const file = shop.files.find((one) => one.path === `content/jobs/${jobId}.yaml`);
  const edited = file ? withReleasedStatus(file) : null;
  if (!file || edited === null) {
    effects.tell(
      `the status of ${jobId} could not be written: write status: released yourself, then release again`,
    );
    return exitStatus.inputErrors;
  }
  const frozen: BuildPlan = { ...loaded.plan, job: { ...loaded.plan.job, status: 'released' } };
  const path = frozenPath(jobId, revision);
  // The plan first: a job that says released without its plan would be computed anew.
  await effects.write(path, `${JSON.stringify(frozen, null, 1)}\n`);
  const status = await replaceOrTell(effects, { path: file.path, before: file.text, after: edited });
  effects.tell(
    status === exitStatus.done
      ? `${jobId}, revision ${revision}, is released${withCautions(standing.length)}; its plan is frozen in ${path}`
      : `the plan of revision ${revision} is frozen in ${path}: write status: released yourself`,
  );
  return status;
}

/** What a release says of cautions that nobody accepted: they do not stop it, and go out with its sheets. */
function withCautions(count: number): string {
  if (count === 0) return '';
  return count === 1
    ? ' with the caution above, which nobody has accepted'
    : ` with the ${count} cautions above, which nobody has accepted`;
}

/** The job file as it was planned, with its status changed. */
function withReleasedStatus(file: SourceFile): string | null {
  const document = readYaml(file.path, file.text).value;
  const span = document?.span('/status');
  if (!document || !span) return null;
  const edited = splice(document.source, [{ ...span, text: 'released' }]);
  return typeof edited === 'string' ? edited : null;
}

/** The released revision of a job whose file would be this one's on a disk that does not tell `A` from `a`. */
function sameFile(frozen: readonly FrozenPlan[], jobId: string, revision: string): string | null {
  const taken = frozen.find(
    ({ job, revision: other }) => job === jobId && onAnyDisk(other) === onAnyDisk(revision),
  );
  return taken?.revision ?? null;
}
