import { estimateJob } from '../../estimate/estimate-job.ts';
import { isStopped } from '../../model/plan/index.ts';
import { estimatePage } from '../../publish/pages/estimate-page.ts';
import { revisionSegment } from '../../publish/site/addresses.ts';
import { wholeFile } from '../../publish/site/kept-pages.ts';
import type { PublishedJob, ShopSite } from '../../publish/site/shop-site.ts';
import { siteAssets } from '../../publish/site/site-assets.ts';
import { openTemplates } from '../../publish/site/templates.ts';
import { jobDrawings } from '../drawings.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus, statusOf } from '../exit-status.ts';
import { loadJob } from '../shop/load-job.ts';
import { siteOf } from '../shop/load-shop.ts';
import { writeExported } from '../told/exported-files.ts';
import { tellFrozen } from '../told/report.ts';
import { estimateText } from './estimate-text.ts';

export interface EstimateChoices {
  readonly job: string;
  /** The folder that the sheet is written to; null for none. */
  readonly to: string | null;
  readonly json: boolean;
}

/**
 * `rackleaf estimate JOB`: what the job comes to, for the shop alone, from what is released where it is, with the prices of
 * today. The sheet is one HTML file that prints on one page.
 */
export async function estimate(
  effects: Effects,
  { job: jobId, to, json }: EstimateChoices,
): Promise<ExitStatus> {
  const found = await loadJob(effects, jobId, { compares: false });
  if (typeof found === 'number') return found;
  const { shop, loaded } = found;
  const site = siteOf(shop);
  const job = site?.jobs.find(({ plan }) => plan.job.id === loaded.plan.job.id);
  if (!site || !job) {
    effects.tell('estimate: it can not be made, since the shop file has errors');
    return exitStatus.inputErrors;
  }
  tellFrozen(loaded, effects);
  const { plan, worked } = job;
  const made = estimateJob({ plan, shop: site.shop, worked });
  effects.out(json ? JSON.stringify(made, null, 2) : estimateText(made, plan));
  if (to !== null) await writeSheet(effects, site, job, to);
  return statusOf({ problems: shop.problems.length > 0, stopped: isStopped(plan) });
}

/** Writes the sheet of a job of a site, and tells where. */
async function writeSheet(
  effects: Effects,
  site: ShopSite,
  job: PublishedJob,
  folder: string,
): Promise<void> {
  const page = estimatePage({ site: { ...site, jobs: [job] }, audience: 'shop' }, job);
  if (page === null) return;
  const content = await wholeFile(page, {
    templates: openTemplates(),
    assets: siteAssets(),
    drawingsOf: jobDrawings(),
  });
  const { id, revision } = job.plan.job;
  const begin = `${id}-${revisionSegment(revision)}-`;
  const files = [{ name: 'estimate.html', content }];
  for (const path of await writeExported(effects, folder, begin, files)) effects.tell(path);
}
