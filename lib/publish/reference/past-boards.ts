import { type PastBoard, pastBoards } from '../../like/past-board.ts';
import { planOfBoardsSchema } from '../../like/plan-of-boards.ts';
import type { Audience } from '../../model/audience.ts';
import { onceFor } from '../../model/once-for.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { onceEach } from '../../plan/once-each.ts';
import type { SiteContext } from '../page/page.ts';
import { addresses } from '../site/addresses.ts';
import type { ShopSite } from '../site/shop-site.ts';
import { leavesHiddenFrom } from '../site/visible-to.ts';

/** The boards of a job, as others are made like them: they are asked for on many pages. */
export const boardsOf = onceFor((plan: BuildPlan): readonly PastBoard[] => pastBoards(plan));

/** The boards of all jobs but one. */
export function boardsOfOthers({ jobs }: Pick<ShopSite, 'jobs'>, job: string | null): PastBoard[] {
  return jobs.flatMap(({ plan }) => (plan.job.id === job ? [] : boardsOf(plan)));
}

/** Whether an audience may see all that past boards are ranked by: a ranking tells of it. */
const maySee = onceEach(
  (audience: Audience) => leavesHiddenFrom(planOfBoardsSchema, audience).length === 0,
  (audience) => audience,
);

/** Whether a site ranks past boards: it is of the whole shop, and for who may see what they are ranked by. */
export function ranksBoards({ site, audience }: SiteContext): boolean {
  return !site.isOneJob && maySee(audience);
}

/** Where the nearest past boards of a job stand; null where it has no board, or the site ranks none. */
export function likeAddress(
  context: SiteContext,
  { job, boards }: Pick<BuildPlan, 'job' | 'boards'>,
): string | null {
  return boards.length > 0 && ranksBoards(context) ? addresses.jobLike(job.id) : null;
}
