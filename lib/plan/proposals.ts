import { proposalId } from '../model/content/proposal.ts';
import type { Job } from '../model/content/resolved-job.ts';
import type { PlanProposal } from '../model/plan/index.ts';

/** What rules proposed for a job, as the plan tells it. */
export function planProposals({ proposals }: Pick<Job, 'proposals'>): PlanProposal[] {
  return proposals.map(({ value, path, ...rest }) => ({
    id: proposalId({ path }),
    ...rest,
    path: [...path],
    says: JSON.stringify(value),
  }));
}
