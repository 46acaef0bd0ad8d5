import { z } from 'zod';
import { builders } from '../audience.ts';
import { markSchema } from '../trace.ts';

/** The rule families that propose, in the order in which they go. */
export const proposalRuleSchema = z.enum([
  'devices',
  'channels',
  'filters',
  'inputs',
  'turn-on',
  'supply',
  'ground',
  'runs',
  'cables',
  'fixings',
  'left-open',
]);
export type ProposalRule = z.infer<typeof proposalRuleSchema>;

/** What a proposal leaves to be looked at: it may be something that was forgotten, or that nobody measured. */
export const proposalDoubtSchema = z.enum(['plays-nothing', 'fader-moves-bass', 'not-measured']);
export type ProposalDoubt = z.infer<typeof proposalDoubtSchema>;

/** One thing that the job left out and a rule proposes: where it would stand in the job, what it would say, and why. */
export const proposalSchema = z.object({
  /** Where it would stand in the job file, key by key: `links`, `feed-amp-sub`. */
  path: z.array(builders(z.string())),
  rule: builders(proposalRuleSchema),
  /** Built from ids and measures only. */
  reason: builders(z.string()),
  /** `cp`: common practice, no source. */
  mark: builders(markSchema.optional()),
  /** What the job file would say there, as JSON that YAML takes word for word. */
  value: builders(z.json()),
  doubt: builders(proposalDoubtSchema.optional()),
});
export type Proposal = z.infer<typeof proposalSchema>;

/** The id of what is proposed: `links.feed-amp-sub`. */
export function proposalId({ path }: Pick<Proposal, 'path'>): string {
  return path.join('.');
}
