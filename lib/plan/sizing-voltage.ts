import type { Job } from '../model/resolved-job.ts';

/**
 * The voltage that currents and sizes are chosen at (V): the house rule's, lower where the vehicle lets its charging
 * voltage vary, and never above what an alternator is set to.
 */
export function sizingVoltageV({ devices, rules }: Pick<Job, 'devices' | 'rules'>): number {
  const alternators = devices.flatMap(({ spec }) => (spec?.kind === 'alternator' ? [spec] : []));
  const varies = alternators.some((alternator) => alternator['variable-voltage']);
  const setPoints = alternators.flatMap((alternator) => alternator['set-point'] ?? []);
  return Math.min(rules[varies ? 'voltage-variable' : 'voltage-sizing'].value, ...setPoints);
}
