import { nothingReleased } from '../../lib/model/content/built.ts';
import type { ReadJob } from '../../lib/model/content/resolved-job.ts';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import type { Problem } from '../../lib/model/problem.ts';
import {
  baseName,
  byPlace,
  contentFiles,
  type OpenShop,
  openShop,
  type ReleasedJobs,
  readCatalogue,
} from '../../lib/read/read-content.ts';
import { frozen } from './frozen.ts';

/** So many shops are held: most tests of a file change the job alone. */
const mostHeld = 8;
const held = new Map<string, OpenShop>();

/**
 * The jobs of a shop and every problem of its files, as `readContent` gives them. What jobs stand in, parts, vehicles and
 * the shop file, is read once for all tests that ask for it in the same words, and frozen: none changes it for another.
 */
export function jobsIn(
  files: readonly SourceFile[],
  released: ReleasedJobs = {},
): { readonly jobs: readonly ReadJob[]; readonly problems: readonly Problem[] } {
  const { jobs, ...around } = contentFiles(files);
  const key = JSON.stringify(around);
  const shop = held.get(key) ?? frozen(openShop(around, readCatalogue(around)));
  held.delete(key);
  held.set(key, shop);
  for (const oldest of held.keys()) if (held.size > mostHeld) held.delete(oldest);
  const read = jobs.map((file) => shop.readJob(file, released[baseName(file.path)] ?? nothingReleased));
  return {
    jobs: read.flatMap(({ value }) => value ?? []),
    problems: [...shop.problems, ...read.flatMap(({ problems }) => problems)].toSorted(byPlace),
  };
}
