import { type HouseRuleName, houseRuleDefinition } from '../house-rules.ts';
import { commonPractice as commonPracticeText, type Mark } from '../trace.ts';

/** Where a finding comes from: what it cites, and how far that may be relied on. */
export interface Source {
  /** A published source, or `common practice, no source`. */
  readonly source: string;
  readonly mark?: Mark;
}

export const commonPractice: Source = { source: commonPracticeText, mark: 'cp' };
/** The design's own principle: nothing is forgotten. */
export const accounting: Source = { source: 'every terminal is accounted for' };
export const partData: Source = { source: "the part's own data" };
export const ampacityTable: Source = {
  source: '33 CFR 183.425, Table 5 (a regulation for boats, here a yardstick)',
};
export const circuitLaws: Source = { source: "Ohm's and Kirchhoff's laws" };
export const geometry: Source = { source: 'geometry of the board as written' };
export const shopStock: Source = { source: "the shop's own stock" };

/** The source of a house rule by its default. */
export function defaultSource(name: HouseRuleName): Source {
  const { citation, mark } = houseRuleDefinition(name);
  return { source: citation, ...(mark && { mark }) };
}
