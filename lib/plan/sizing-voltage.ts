import type { Job } from '../model/resolved-job.ts';

/** The voltage that currents and sizes are chosen at (V): lower where the vehicle lets its charging voltage vary. */
export function sizingVoltageV({ devices, rules }: Pick<Job, 'devices' | 'rules'>): number {
  const varies = devices.some(({ spec }) => spec?.kind === 'alternator' && spec['variable-voltage']);
  return rules[varies ? 'voltage-variable' : 'voltage-sizing'].value;
}
