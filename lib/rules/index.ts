export { rules } from './all-rules.ts';
export { judge } from './judge.ts';
export type { Case, Rule, Spot, Verdict } from './rule.ts';
