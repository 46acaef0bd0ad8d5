import { withCrew } from '../crew/with-crew.ts';
import type { Effects } from '../effects.ts';
import type { ExitStatus } from '../exit-status.ts';
import { tellProblems } from '../told/report.ts';
import {
  type LoadedJob,
  type LoadedShop,
  type LoadWish,
  loadShop,
  missingJob,
  missingStatus,
} from './load-shop.ts';

/** One job with the shop that it was read from. */
export interface JobInShop {
  readonly shop: LoadedShop;
  readonly loaded: LoadedJob;
}

/** Loads one job and tells what is wrong in the files; the status to end with where there is no such job, which is told too. */
export async function loadJob(
  effects: Effects,
  jobId: string,
  wish: Pick<LoadWish, 'compares'>,
): Promise<JobInShop | ExitStatus> {
  const shop = await withCrew(effects, (crew) =>
    loadShop(effects, crew, { ...wish, only: (id) => id === jobId }),
  );
  tellProblems(shop, effects);
  const [loaded] = shop.jobs;
  if (loaded) return { shop, loaded };
  effects.tell(missingJob(shop, jobId));
  return missingStatus(shop);
}
