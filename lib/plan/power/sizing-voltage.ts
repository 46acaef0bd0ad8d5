import type { Job } from '../../model/content/resolved-job.ts';
import { systemVoltageOf } from '../../model/system-voltage.ts';
import { sizingVoltageV } from '../../power/network/sizing-voltage.ts';
import { type Island, islandAt, islandSystemV } from './circuit/circuit-islands.ts';

/** How many times the voltage of the vehicle's system a node has: half where a charger makes 12 V out of 24 V. */
export function systemShare(job: Pick<Job, 'vehicle'>, islands: readonly Island[], node: string): number {
  const vehicleV = systemVoltageOf(job.vehicle['system-voltage']);
  return islandSystemV(islandAt(islands, node), vehicleV) / vehicleV;
}

/**
 * The voltage that currents and sizes are chosen at, at a node (V): where a charger feeds it, in its system's proportion and never above what the charger
 * regulates to.
 */
export function sizingVoltageAt(
  job: Pick<Job, 'devices' | 'rules' | 'vehicle'>,
  islands: readonly Island[],
  node: string,
): number {
  const share = systemShare(job, islands, node);
  const chargersV = (islandAt(islands, node)?.sources ?? []).flatMap(({ device: { spec } }) =>
    spec?.kind === 'charger' ? [spec.output.voltage] : [],
  );
  const vehicleV = share === 1 ? sizingVoltageV(job) : sizingVoltageV({ devices: [], rules: job.rules });
  return Math.min(vehicleV * share, ...chargersV);
}
