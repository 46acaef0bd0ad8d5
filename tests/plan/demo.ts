import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import type { Job } from '../../lib/model/resolved-job.ts';
import type { SourceFile } from '../../lib/model/source-file.ts';
import { planJob } from '../../lib/plan/plan-job.ts';
import { type Content, readContent } from '../../lib/read/read-content.ts';
import { judge } from '../../lib/rules/index.ts';

/** The folder that holds `content/`. */
export const root = fileURLToPath(new URL('../..', import.meta.url));

/** The jobs that the demo shop comes with. */
export const demoJobs = ['under-seat-five', 'estate-side-well', 'van-three-amps'] as const;
export type DemoJob = (typeof demoJobs)[number];

let files: readonly SourceFile[] | null = null;
let content: Content | null = null;
const plans = new Map<string, BuildPlan | Error>();

/** The files of the demo shop as they were written; frozen plans of released revisions are not among them. */
export function demoFiles(): readonly SourceFile[] {
  files ??= readdirSync(join(root, 'content'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(yaml|md)$/.test(entry.name))
    .map(({ parentPath, name }) => join(parentPath, name))
    .sort()
    .map((path) => ({
      path: relative(root, path).split(sep).join('/'),
      text: readFileSync(path, 'utf8'),
    }));
  return files;
}

/** The demo shop as read: once for a file of tests. */
export function demoContent(): Content {
  content ??= readContent(demoFiles());
  return content;
}

export function demoJob(id: string): Job {
  const job = demoContent().jobs.find((one) => one.id === id);
  if (!job) throw new Error(`The demo job ${id} can not be read.`);
  return job;
}

/** The judged plan of a demo job: planned once for a file of tests, and not to be changed. */
export function demoPlan(id: DemoJob): BuildPlan {
  const known = plans.get(id) ?? planned(id);
  plans.set(id, known);
  if (known instanceof Error) throw known;
  return known;
}

/** The plan, or why there is none: a job that can't be planned is not tried again for every test. */
function planned(id: DemoJob): BuildPlan | Error {
  try {
    return judgedPlan(demoJob(id));
  } catch (error) {
    return error instanceof Error ? error : new Error(String(error));
  }
}

/** Plans and judges a job. */
export function judgedPlan(job: Job): BuildPlan {
  const { plan, remarks } = planJob(job);
  return { ...plan, findings: judge(job, plan, remarks) };
}
