import { type HouseRuleName, houseRuleDefinition } from '../model/house-rules.ts';
import type { Job } from '../model/resolved-job.ts';
import type { Mark } from '../model/trace.ts';

/** Where a rule comes from: what it cites, and how far that may be relied on. */
export interface Source {
  readonly source: string;
  readonly mark?: Mark;
}

export const commonPractice: Source = { source: 'common practice, no source', mark: 'cp' };
/** The design's own principle: nothing is forgotten. */
export const accounting: Source = { source: 'every terminal is accounted for' };
export const partData: Source = { source: "the part's own data" };
export const ampacityTable: Source = {
  source: '33 CFR 183.425, Table 5 (a regulation for boats, here a yardstick)',
};

/** The source of a house rule by its default. */
export function defaultSource(name: HouseRuleName): Source {
  const { citation, mark } = houseRuleDefinition(name);
  return { source: citation, ...(mark && { mark }) };
}

/** The value of a house rule in SI, with the source that a finding about it cites. */
export function houseRule(job: Job, name: HouseRuleName): { readonly value: number; readonly from: Source } {
  const { value, given } = job.rules[name];
  const { source, mark } = defaultSource(name);
  const cited = given ? `the shop's own rule ${name} (default: ${source})` : source;
  return { value, from: { source: cited, ...(mark && { mark }) } };
}
