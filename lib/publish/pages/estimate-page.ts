import { estimateJob } from '../../estimate/estimate-job.ts';
import type { Audience } from '../../model/audience.ts';
import { estimateSchema } from '../../model/estimate/estimate.ts';
import { sheetMark } from '../../model/plan/sheet-mark.ts';
import { onceEach } from '../../plan/once-each.ts';
import { estimateBody } from '../estimate/estimate-body.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Page, SiteContext } from '../page/page.ts';
import { addresses } from '../site/addresses.ts';
import type { PublishedJob } from '../site/shop-site.ts';
import { leavesHiddenFrom } from '../site/visible-to.ts';

/** Whether an audience may see all that an estimate holds: each leaf of it is for the shop alone. */
export const seesEstimates = onceEach(
  (audience: Audience) => leavesHiddenFrom(estimateSchema, audience).length === 0,
  (audience) => audience,
);

/** The estimate of a job as one file, which prints on one page; null for who may not see it. */
export function estimatePage(context: SiteContext, { plan, worked }: PublishedJob): Page | null {
  if (!seesEstimates(context.audience)) return null;
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
      const estimate = estimateJob({ plan, shop: context.site.shop, worked });
      return { ...chromeOf(context, face), body: estimateBody(estimate, plan) };
    },
  };
}
