import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { nothingReleased, type ReleasedFacts } from '../../lib/model/content/built.ts';
import type { ReadJob } from '../../lib/model/content/resolved-job.ts';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import type { Problem } from '../../lib/model/problem.ts';
import { root } from '../plan/demo.ts';
import { jobsIn } from '../shops/shop-once.ts';

const own = fileURLToPath(new URL('.', import.meta.url));

function filesIn(folder: string, at: string): readonly SourceFile[] {
  const whole = join(folder, at);
  if (!existsSync(whole)) return [];
  return readdirSync(whole)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => ({ path: `${at}/${name}`, text: readFileSync(join(whole, name), 'utf8') }));
}

/** What the shelf has of the parts that short jobs ask for beside those of the demo shop. */
const shelf = [
  'wire-power-12-rd: { reels: [50 ft] }',
  'wire-ground-12-bk: { reels: [50 ft] }',
  'amp-small-two: { pieces: 1 }',
  'amp-small-bass: { pieces: 1 }',
  'enclosure-slim-18: { pieces: 1 }',
  'isolating-relay-200: { pieces: 1 }',
];

function shelved({ path, text }: SourceFile): SourceFile {
  return {
    path,
    text: text.replace('\nstock:\n', `\nstock:\n${shelf.map((line) => `  ${line}\n`).join('')}`),
  };
}

/** The demo shop, with the vehicles and parts that short jobs ask for beside it. */
export const shop: readonly SourceFile[] = [
  ...filesIn(root, 'content')
    .filter(({ path }) => path.endsWith('shop.yaml'))
    .map(shelved),
  ...['content/parts', 'content/vehicles'].flatMap((at) => [...filesIn(root, at), ...filesIn(own, at)]),
];

/** The text of a short job as a fabricator writes it. */
export function shortText(id: string): string {
  return readFileSync(join(own, 'content/jobs', `${id}.yaml`), 'utf8');
}

/** Ids of the short jobs. */
export const shortJobs = filesIn(own, 'content/jobs').map(({ path }) => path.replace(/^.*\/|\.yaml$/g, ''));

/** A job as it is read in the demo shop, and what could not be. */
export interface ReadShort {
  readonly job: ReadJob | null;
  readonly problems: readonly Problem[];
}

/** Reads a job text in the demo shop, or in one that differs from it. */
export function readShort(
  text: string,
  released: ReleasedFacts = nothingReleased,
  files: readonly SourceFile[] = shop,
): ReadShort {
  const [, id = 'job'] = /^id: (.*)$/m.exec(text) ?? [];
  const { jobs, problems } = jobsIn([...files, { path: `content/jobs/${id}.yaml`, text }], {
    [id]: released,
  });
  return { job: jobs[0] ?? null, problems };
}

/** A short job; a fault in it is a fault of the test. */
export function shortJob(id: string): ReadJob {
  const { job, problems } = readShort(shortText(id));
  if (!job) throw new Error(problems.map(({ message }) => message).join('\n'));
  return job;
}

/** A demo job rewritten short, read in the demo shop. */
export function rewrittenJob(id: string): ReadJob {
  const { job, problems } = readShort(readFileSync(join(own, 'rewritten', `${id}.yaml`), 'utf8'));
  if (!job) throw new Error(problems.map(({ message }) => message).join('\n'));
  return job;
}
