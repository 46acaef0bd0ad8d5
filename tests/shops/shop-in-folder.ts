import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { jobFilesIn } from '../../lib/commands/kept/job-files.ts';
import { type JobFiles, shopReader } from '../../lib/commands/kept/shop-steps.ts';
import { judgedPlan } from '../../lib/commands/shop/judged-plan.ts';
import { nothingReleased } from '../../lib/model/content/built.ts';
import type { ReadJob } from '../../lib/model/content/resolved-job.ts';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import type { Step } from '../../lib/model/keep.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import { baseName, type Content, contentFiles, readContent } from '../../lib/read/read-content.ts';
import { testCrew } from './test-crew.ts';

/** The judged plan of a job from its files; null where it can't be read. */
const judgedStep: Step<JobFiles, BuildPlan | null> = {
  id: 'plan',
  compute: (files, keep) => {
    const { value: job } = shopReader().job(files, keep);
    return job && judgedPlan(job, keep);
  },
};

/** A shop as it stands in a folder, for tests that read it and change nothing. */
export class ShopInFolder {
  /** Every file as it was written; frozen plans of released revisions are not among them. */
  readonly files: readonly SourceFile[];
  #content: Content | null = null;
  readonly #plans = new Map<string, BuildPlan | Error>();

  /** @param root The folder that holds `content/`. */
  constructor(root: string) {
    this.files = readdirSync(join(root, 'content'), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && /\.(yaml|md)$/.test(entry.name))
      .map(({ parentPath, name }) => join(parentPath, name))
      .sort()
      .map((path) => ({
        path: relative(root, path).split(sep).join('/'),
        text: readFileSync(path, 'utf8'),
      }));
  }

  /** The ids of its jobs, as their files are named. */
  get jobIds(): readonly string[] {
    return this.files.flatMap(({ path }) => /^content\/jobs\/([^/]+)\.yaml$/.exec(path)?.[1] ?? []);
  }

  /** The shop as read: once for a file of tests. */
  get content(): Content {
    this.#content ??= readContent(this.files);
    return this.#content;
  }

  job(id: string): ReadJob {
    const job = this.content.jobs.find((one) => one.id === id);
    if (!job) throw new Error(`The job ${id} can not be read.`);
    return job;
  }

  /** The judged plan of a job, not to be changed. */
  plan(id: string): BuildPlan {
    const known = this.#plans.get(id) ?? this.#planned(id);
    this.#plans.set(id, known);
    if (known instanceof Error) throw known;
    return known;
  }

  /** The plan, or why there is none: a job that can't be planned is not tried again for every test. */
  #planned(id: string): BuildPlan | Error {
    try {
      const { jobs, ...shop } = contentFiles(this.files);
      const own = jobs.find(({ path }) => baseName(path) === id);
      const { keep } = testCrew();
      const plan = own
        ? keep(judgedStep, jobFilesIn(shop, own, { released: nothingReleased, promised: [] }, keep))
        : null;
      return plan ?? new Error(`The job ${id} can not be read.`);
    } catch (error) {
      return error instanceof Error ? error : new Error(String(error));
    }
  }
}
