import { z } from 'zod';
import { builders } from '../audience.ts';
import { proposalDoubtSchema, proposalRuleSchema } from '../content/proposal.ts';
import { markSchema } from '../trace.ts';

/** Something that the job leaves out and a rule proposes. */
export const planProposalSchema = z.object({
  /** Where it would stand in the job file: `links.feed-amp-sub`. */
  id: builders(z.string()),
  /** The same, key by key. */
  path: z.array(builders(z.string())),
  rule: builders(proposalRuleSchema),
  reason: builders(z.string()),
  mark: builders(markSchema.optional()),
  /** What the job file would say there, as JSON that YAML takes word for word. */
  says: builders(z.string()),
  doubt: builders(proposalDoubtSchema.optional()),
  /** The released revision that it was built in already; left out of what is proposed anew. */
  since: builders(z.string().optional()),
});
export type PlanProposal = z.output<typeof planProposalSchema>;
