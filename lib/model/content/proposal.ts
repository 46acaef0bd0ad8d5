import { z } from 'zod';
import type { Mark } from '../trace.ts';

/** The families of rules that propose, in the order in which they go. */
export const proposalRuleSchema = z.enum([
  'channels',
  'inputs',
  'filters',
  'turn-on',
  'supply',
  'ground',
  'runs',
  'cables',
  'board-size',
  'fixings',
  'left-open',
]);
export type ProposalRule = z.infer<typeof proposalRuleSchema>;

/** What a proposal leaves to be looked at: it may be something that was forgotten, or that nobody measured. */
export const proposalDoubtSchema = z.enum([
  'plays-nothing',
  'fader-moves-bass',
  'bass-pair-chosen',
  'not-measured',
]);
export type ProposalDoubt = z.infer<typeof proposalDoubtSchema>;

/** What a job file may say somewhere: JSON, which YAML takes word for word. */
export const writtenValueSchema = z.json();
export type WrittenValue = z.infer<typeof writtenValueSchema>;

/** True for what has fields of its own; a list and a single value have none. */
export function hasFields(value: unknown): value is { [name: string]: WrittenValue } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** One thing that the job left out and a rule proposes: where it would stand in the job, what it would say, and why. */
export interface Proposal {
  /** Where it would stand in the job file, key by key: `links`, `feed-amp-sub`. */
  readonly path: readonly string[];
  readonly rule: ProposalRule;
  /** Built from ids and measures only. */
  readonly reason: string;
  /** `cp`: common practice, no source. */
  readonly mark?: Mark;
  readonly value: WrittenValue;
  readonly doubt?: ProposalDoubt;
  /** The released revision that it is taken from, and built as. */
  readonly since?: string;
}

/** The id of what is proposed: `links.feed-amp-sub`. */
export function proposalId({ path }: Pick<Proposal, 'path'>): string {
  return path.join('.');
}
