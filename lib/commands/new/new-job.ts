import type { SourceFile } from '../../model/content/source-file.ts';
import { day, fileId } from '../../model/fields.ts';
import { type Content, readContent } from '../../read/read-content.ts';
import { remedyFor } from '../../read/report.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus } from '../exit-status.ts';
import { jobSkeleton } from './job-skeleton.ts';

/** The words of the command line, as they were given. */
export interface NewJobWords {
  readonly job: string;
  readonly vehicle: string | null;
  readonly space: string | null;
  readonly title: string | null;
  readonly date: string | null;
}

/** `rackleaf new JOB`: writes a job file that has all sections and names what the vehicle offers to each. */
export async function newJob(effects: Effects, words: NewJobWords): Promise<ExitStatus> {
  const files = await effects.readContent();
  const content = readContent(files);
  const beginning = beginningOf(content, words, takenIds(files), effects.today());
  if (typeof beginning === 'string') {
    effects.tell(`new: ${beginning}`);
    return exitStatus.inputErrors;
  }
  const path = `content/jobs/${words.job}.yaml`;
  await effects.write(path, jobSkeleton(beginning, content.parts));
  effects.out(path);
  effects.tell(`fill it in, then: rackleaf check ${words.job}`);
  return exitStatus.done;
}

function beginningOf(
  content: Content,
  { job, vehicle, space, title, date }: NewJobWords,
  taken: ReadonlySet<string>,
  today: string,
): Parameters<typeof jobSkeleton>[0] | string {
  const named = fileId.safeParse(job);
  if (!named.success) return `"${job}" ${named.error.issues[0]?.message ?? 'is not an id'}`;
  if (taken.has(job)) return `the job "${job}" is there already: a name is never used twice`;
  const known = Object.keys(content.vehicles);
  const name = vehicle ?? (known.length === 1 ? known[0] : undefined);
  if (name === undefined) return `say which vehicle by --vehicle; ${remedyFor('', known)}`;
  const found = content.vehicles[name];
  if (!found) return `there is no vehicle "${name}"; ${remedyFor(name, known)}`;
  const spaces = Object.keys(found.spaces);
  if (space !== null && !spaces.includes(space))
    return `there is no space of ${name} "${space}"; ${remedyFor(space, spaces)}`;
  const issued = date ?? today;
  if (!day.safeParse(issued).success) return `"${issued}" is not a date: write it as 2026-02-09`;
  const only = spaces.length === 1 ? (spaces[0] ?? null) : null;
  return { id: job, title: title ?? job, date: issued, vehicle: found, space: space ?? only };
}

/** Every name that a job has or had: of job files, read or not, and of folders with frozen plans. */
function takenIds(files: readonly SourceFile[]): ReadonlySet<string> {
  return new Set(
    files.flatMap(({ path }) => {
      const name = /^content\/jobs\/([^/]+?)(?:\.yaml$|\/)/.exec(path)?.[1];
      return name === undefined ? [] : [name];
    }),
  );
}
