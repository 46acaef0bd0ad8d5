import { addresses } from '../addresses.ts';
import { chromeOf } from '../chrome.ts';
import { type JobEntry, jobEntries } from '../job-list.ts';
import type { Page, SiteContext } from '../page.ts';

/** The index of jobs. */
export interface JobsBody {
  readonly jobs: readonly JobEntry[];
}

/** The page that lists every job. */
export function jobsPage(context: SiteContext): Page {
  const address = addresses.jobs;
  return {
    address,
    template: 'jobs.njk',
    model: () => {
      const body: JobsBody = { jobs: jobEntries(address, context.site.jobs) };
      return { ...chromeOf(context, { address, title: 'Jobs' }), body };
    },
  };
}
