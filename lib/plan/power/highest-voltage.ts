import type { Job } from '../../model/content/resolved-job.ts';
import { alternatorsOf, varyingCharge } from '../../power/network/varying-charge.ts';

/**
 * The highest voltage (V) that the system stands at: the most that a sound charging system shows, the high end where the
 * charging voltage varies, or what an alternator is set to where that is more. A dead short begins at it.
 */
export function highestVoltageV({
  devices,
  rules,
  vehicle,
}: Pick<Job, 'devices' | 'rules' | 'vehicle'>): number {
  const alternators = alternatorsOf(devices);
  const varying = varyingCharge({ devices, rules, vehicle });
  return Math.max(
    rules['check-in-charging-most'].value,
    ...(varying ? [varying.highV] : []),
    ...alternators.flatMap((alternator) => alternator['set-point'] ?? []),
  );
}
