import { join } from 'node:path';
import { textsBelow } from '../../lib/commands/effects.ts';
import { EmptyFolder } from '../commands/shop-folder.ts';
import { type FixedJob, fixedRoot } from './fixed-jobs.ts';

/** A folder of its own with the shop of the fixed jobs, and of these only some. */
export async function boardsFolder(...jobs: readonly FixedJob[]): Promise<EmptyFolder> {
  const folder = new EmptyFolder();
  for (const { path, text } of await textsBelow(fixedRoot, join(fixedRoot, 'content'))) {
    const [, job] = /^content\/jobs\/([^/]+)\.yaml$/.exec(path) ?? [];
    if (job === undefined || jobs.some((one) => one === job)) folder.write(path, text);
  }
  return folder;
}
