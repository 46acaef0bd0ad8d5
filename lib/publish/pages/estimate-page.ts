import { estimateJob } from '../../estimate/estimate-job.ts';
import { estimateSchema } from '../../model/estimate/estimate.ts';
import { sheetMark } from '../../model/plan/sheet-mark.ts';
import { estimateBody } from '../estimate/estimate-body.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Page, SiteContext } from '../page/page.ts';
import { addresses } from '../site/addresses.ts';
import type { PublishedJob } from '../site/shop-site.ts';
import { visibleTo } from '../site/visible-to.ts';

/**
 * The estimate of a job as one file, which prints on one page. Each leaf of an estimate is for the shop alone: null for
 * whoever else looks.
 */
export function estimatePage(context: SiteContext, { plan, worked }: PublishedJob): Page | null {
  const { site, audience } = context;
  const estimate = estimateJob({ plan, shop: site.shop, worked });
  if (visibleTo(estimateSchema, estimate, audience) === undefined) return null;
  const { job } = plan;
  const address = addresses.estimate(job.id);
  return {
    address,
    template: 'shop/estimate.njk',
    isOneFile: true,
    model: () => {
      const face = {
        address,
        title: 'Estimate',
        above: [
          ['Jobs', addresses.jobs],
          [job.title, addresses.job(job.id)],
        ] as const,
        mark: sheetMark(plan)?.word ?? null,
        foot: `${job.id}, revision ${job.revision}, estimate: for the shop alone`,
      };
      return { ...chromeOf(context, face), body: estimateBody(estimate, plan) };
    },
  };
}
