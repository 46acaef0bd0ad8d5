import { chromeOf } from '../page/chrome.ts';
import type { Page, SiteContext } from '../page/page.ts';
import { addresses, linkTo } from '../site/addresses.ts';
import { type JobEntry, jobEntries } from '../site/job-list.ts';

/** The index of jobs. */
export interface JobsBody {
  readonly jobs: readonly JobEntry[];
  /** The way to the shop reference; null where there is none. */
  readonly referenceHref: string | null;
}

/** The page that lists every job. */
export function jobsPage(context: SiteContext): Page {
  const address = addresses.jobs;
  return {
    address,
    template: 'jobs.njk',
    model: () => {
      const body: JobsBody = {
        jobs: jobEntries(address, context.site.jobs),
        referenceHref: context.site.isOneJob ? null : linkTo(address, addresses.reference),
      };
      return { ...chromeOf(context, { address, title: 'Jobs' }), body };
    },
  };
}
