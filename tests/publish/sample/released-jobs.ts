import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import type { PublishedJob } from '../../../lib/publish/site/shop-site.ts';
import { frozenIn } from '../../compare/plans.ts';

const vehicle = { id: 'sample-estate', title: 'Estate car, five doors', cautions: [] };

/** A plan as a revision of a job in the vehicle of the sample site. */
function planAs(plan: BuildPlan, job: Partial<BuildPlan['job']>): BuildPlan {
  return { ...plan, vehicle, job: { ...plan.job, status: 'released', ...job } };
}

const older = frozenIn(0, 'estate-side-well');
const newer = frozenIn(1, 'estate-side-well');

/** Three revisions of a job: the first one superseded, the second one standing, the third one drawn after it. */
export const revisionA = planAs(older, {
  id: 'well',
  revision: 'A',
  status: 'superseded',
  issuedOn: '2026-03-02',
});
export const revisionB = planAs(newer, { id: 'well', revision: 'B', issuedOn: '2026-03-14' });
export const revisionC = planAs(newer, {
  id: 'well',
  revision: 'C',
  status: 'draft',
  issuedOn: '2026-04-01',
});

/** A job as it stands, with what of it was released. */
export function released(plan: BuildPlan, ...frozen: readonly BuildPlan[]): PublishedJob {
  const revisions = frozen.map((one) => ({ revision: one.job.revision, plan: one }));
  return { plan, customer: {}, worked: [], handOver: null, serials: {}, revisions };
}

/** Another job in the same vehicle, with another board. */
export const otherJob = released(
  planAs(frozenIn(1, 'under-seat-five'), { id: 'seat', revision: 'A', issuedOn: '2026-02-09' }),
);
