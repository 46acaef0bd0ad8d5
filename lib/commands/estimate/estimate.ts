import { join } from 'node:path';
import { estimateJob } from '../../estimate/estimate-job.ts';
import { isStopped } from '../../model/plan/index.ts';
import { estimatePage } from '../../publish/pages/estimate-page.ts';
import { revisionSegment } from '../../publish/site/addresses.ts';
import { wholeFile } from '../../publish/site/kept-pages.ts';
import type { ShopSite } from '../../publish/site/shop-site.ts';
import { siteAssets } from '../../publish/site/site-assets.ts';
import { openTemplates } from '../../publish/site/templates.ts';
import { withCrew } from '../crew/with-crew.ts';
import { jobDrawings } from '../drawings.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus, statusOf } from '../exit-status.ts';
import { loadShop, missingJob, missingStatus, siteOf } from '../shop/load-shop.ts';
import { writeExported } from '../told/exported-files.ts';
import { tellFrozen, tellProblems } from '../told/report.ts';
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
  const shop = await withCrew(effects, (crew) =>
    loadShop(effects, crew, { only: (id) => id === jobId, compares: false }),
  );
  tellProblems(shop, effects);
  const [loaded] = shop.jobs;
  if (!loaded) {
    effects.tell(missingJob(shop, jobId));
    return missingStatus(shop);
  }
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
  if (to !== null) await writeSheet(effects, { ...site, jobs: [job] }, to);
  return statusOf({ problems: shop.problems.length > 0, stopped: isStopped(plan) });
}

/** Writes the sheet of the one job of a site, and tells where. */
async function writeSheet(effects: Effects, site: ShopSite, folder: string): Promise<void> {
  for (const job of site.jobs) {
    const page = estimatePage({ site, audience: 'shop' }, job);
    if (page === null) continue;
    const content = await wholeFile(page, {
      templates: openTemplates(),
      assets: siteAssets(),
      drawingsOf: jobDrawings(),
    });
    const { id, revision } = job.plan.job;
    const begin = `${id}-${revisionSegment(revision)}-`;
    for (const path of await writeExported(effects, join(folder), begin, [
      { name: 'estimate.html', content },
    ]))
      effects.tell(path);
  }
}
