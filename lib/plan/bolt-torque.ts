import type { HouseRules } from '../model/house-rules.ts';

/** Torque of a steel bolt of a thread by the house rule, N m; null for a thread that has none. */
export function studTorque(rules: HouseRules, thread: string): number | null {
  if (thread === 'M6') return rules['torque-m6'].value;
  return thread === 'M8' ? rules['torque-m8'].value : null;
}

/** Torque that a rivet nut takes, N m: a larger one counts as M8; of a smaller one it is not known. */
export function insertTorque(rules: HouseRules, thread: string): number | undefined {
  if (thread === 'M6') return rules['torque-rivet-nut-m6'].value;
  return thread === 'M4' || thread === 'M5' ? undefined : rules['torque-rivet-nut-m8'].value;
}
