import type { Work } from '../../../lib/plan/work/work.ts';

/** What work is by the house rules, and nothing of any job. */
export const usualWork: Omit<Work, 'plan' | 'declared'> = {
  times: {},
  tape: { system: 'inch', fraction: 16 },
  tiesM: { board: 0.1524, vehicle: 0.3048 },
  bankWithinV: 0.5,
  continuityOhm: { ground: 0.1, wire: 1 },
  gainUnder: 0.05,
  systemV: 12,
  sourcesAt: [],
  activeTweeters: [],
  fans: [],
  screwsOut: [],
  letIn: [],
  openings: [],
  boxes: [],
  reachable: [],
  groundBolts: [],
  loose: [],
};
