import type { Audience } from '../../model/audience.ts';
import { wayUp } from '../site/addresses.ts';
import { type JobEntry, jobEntries } from '../site/job-list.ts';
import type { PublishedJob } from '../site/shop-site.ts';
import { factsOf } from './job-facts.ts';
import { thumbnailOf } from './thumbnail-file.ts';

/** A job among others, as it is recognised: with the thumbnail of its board. */
export interface JobHit extends JobEntry {
  /** The thumbnail from the page that shows it, and what it shows; null where the job has no board. */
  readonly picture: { readonly src: string; readonly title: string } | null;
  /** Where its boards are. */
  readonly spaces: string;
  /** For what it has the thing that the page is about; empty where the page is about none. */
  readonly uses: readonly string[];
}

/** Jobs as a list of hits, by id. `usesOf`: for what each has the thing that the page is about. */
export function jobHits(
  from: string,
  jobs: readonly PublishedJob[],
  audience: Audience,
  usesOf: (job: PublishedJob) => readonly string[] = () => [],
): JobHit[] {
  const byId = new Map(jobs.map((job) => [job.plan.job.id, job]));
  return jobEntries(from, jobs).flatMap((entry) => {
    const job = byId.get(entry.id);
    if (!job) return [];
    const { boards = [] } = factsOf(job.plan, audience);
    const spaces = boards.map(({ spaceTitle }) => spaceTitle).filter((title) => title !== undefined);
    const thumbnail = thumbnailOf(job.plan);
    const picture = thumbnail && { src: `${wayUp(from)}${thumbnail.path}`, title: thumbnail.title };
    return [{ ...entry, picture, spaces: [...new Set(spaces)].join(', '), uses: usesOf(job) }];
  });
}
