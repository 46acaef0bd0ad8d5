import type { JobFile } from '../../model/content/job.ts';
import { loneSite } from '../../publish/site/lone/lone-job.ts';
import type { OtherJob } from '../../publish/site/lone/other-jobs.ts';
import type { ShopSite } from '../../publish/site/shop-site.ts';
import type { LoadedShop } from './load-shop.ts';

/** A shop as far as it concerns one job: what is wrong in the files of others is not told. */
export function shopOfJob(shop: LoadedShop, job: string): LoadedShop {
  const isOfOther = (file: string): boolean => {
    const [, of] = /^content\/jobs\/([^/]+?)(?:\.yaml$|\/)/.exec(file) ?? [];
    return of !== undefined && of !== job;
  };
  return { ...shop, problems: shop.problems.filter(({ where }) => !isOfOther(where.file)) };
}

/** The site of one job alone, with what is told of it: the guides that are left out since they tell of others. */
export function loneSiteOf(
  site: ShopSite,
  { content, unreadJobs }: Pick<LoadedShop, 'content' | 'unreadJobs'>,
  job: string,
): { readonly site: ShopSite; readonly told: readonly string[] } {
  const read = content().jobs.map(
    ({ id, file }): OtherJob => ({ id, names: [file.title, ...customerNames(file)] }),
  );
  const { site: lone, leftOut } = loneSite(site, job, [
    ...read,
    ...unreadJobs.map((id) => ({ id, names: [] })),
  ]);
  const told = leftOut.map(
    (slug) => `content/guides/${slug}.md is left out: it names another job or its customer`,
  );
  return { site: lone, told };
}

/** By what the customer of a job is known. They are only looked for, and go nowhere. */
function customerNames({ customer }: Pick<JobFile, 'customer'>): string[] {
  const { name, contact, plate, vin } = customer;
  return [name, contact, plate, vin].flatMap((one) => (one === undefined ? [] : [one.reveal()]));
}
