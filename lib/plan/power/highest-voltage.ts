import type { Job } from '../../model/content/resolved-job.ts';

/**
 * The highest voltage (V) that the system stands at: the most that a sound charging system shows, the high end where the
 * charging voltage varies, or what an alternator is set to where that is more. A dead short begins at it.
 */
export function highestVoltageV({ devices, rules }: Pick<Job, 'devices' | 'rules'>): number {
  const alternators = devices.flatMap(({ spec }) => (spec?.kind === 'alternator' ? [spec] : []));
  const varies = alternators.some((alternator) => alternator['variable-voltage']);
  return Math.max(
    rules['check-in-charging-most'].value,
    ...(varies ? [rules['voltage-variable-high'].value] : []),
    ...alternators.flatMap((alternator) => alternator['set-point'] ?? []),
  );
}
