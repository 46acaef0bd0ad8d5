import { problemText } from '../../model/problem.ts';
import type { PublishedJob, ShopSite } from '../../publish/site/shop-site.ts';
import type { Effects } from '../effects.ts';
import { type LoadedJob, type LoadedShop, siteWithPhotos } from './load-shop.ts';

/** A job on the site of its shop, from which what is printed of it is made. */
export interface JobOnSite {
  readonly site: ShopSite;
  readonly job: PublishedJob;
  /** False where a photo is left out. */
  readonly isWhole: boolean;
}

/** A job on the site of its shop; null where the shop file can't be read. Photos that are left out are told. */
export async function siteOfJob(
  effects: Effects,
  shop: LoadedShop,
  { plan }: LoadedJob,
): Promise<JobOnSite | null> {
  const made = await siteWithPhotos(effects, shop);
  for (const problem of made?.problems ?? []) effects.tell(problemText(problem));
  const job = made?.site.jobs.find((one) => one.plan.job.id === plan.job.id);
  return made && job ? { site: made.site, job, isWhole: made.problems.length === 0 } : null;
}
