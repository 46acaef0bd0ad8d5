import type { Job } from '../model/content/resolved-job.ts';
import { defaultSource, type Source } from '../model/findings/source.ts';
import type { HouseRuleName } from '../model/house-rules.ts';

export { commonPractice, partData, type Source } from '../model/findings/source.ts';

/** The value of a house rule in SI, with the source that a finding about it cites. */
export function houseRule(job: Job, name: HouseRuleName): { readonly value: number; readonly from: Source } {
  const { value, given, ofVehicle } = job.rules[name];
  const { source, mark } = defaultSource(name);
  const cited = given ? `the shop's own rule ${name} (default: ${source})` : source;
  if (ofVehicle) return { value, from: { source: `${name}, as it was read at the vehicle` } };
  return { value, from: { source: cited, ...(mark && { mark }) } };
}
