import type { PublishedJob } from './shop-site.ts';

/** Jobs in the order in which pages list them: by id. */
export function inOrder(jobs: readonly PublishedJob[]): PublishedJob[] {
  return [...jobs].sort((a, b) => (a.plan.job.id < b.plan.job.id ? -1 : 1));
}
