import type { DeviceDrop, OperatingPoint } from '../model/plan/index.ts';
import type { NetworkInput } from './operating-points.ts';
import { sizingVoltageV } from './sizing-voltage.ts';

/**
 * Voltage at each device of a solved point, feed and ground drop told apart. They count from the battery that
 * feeds the device with the least loss: feed = V(battery +) - V(device +), ground = V(device -) - V(battery -).
 */
export function deviceDrops(
  { job, circuit, paths, loads }: NetworkInput,
  point: OperatingPoint,
): DeviceDrop[] {
  const voltage = new Map(point.nodes.map(({ id, voltageV }) => [id, voltageV]));
  const batteries = circuit.sources.filter(({ type }) => type === 'battery');
  return loads.flatMap((load): DeviceDrop[] => {
    const own = paths.fed.find(({ device }) => device.id === load.item);
    const [plus, minus] = [voltage.get(own?.from ?? ''), voltage.get(own?.to ?? '')];
    if (plus === undefined || plus === null || minus === undefined || minus === null) return [];
    const drops = batteries.flatMap(({ device, positive, negative }): DeviceDrop[] => {
      const [high, low] = [voltage.get(positive), voltage.get(negative)];
      if (high === undefined || high === null || low === undefined || low === null) return [];
      const feedDropV = high - plus;
      const groundDropV = minus - low;
      const share = (feedDropV + groundDropV) / sizingVoltageV(job);
      return [
        {
          point: point.name,
          item: load.item,
          source: device.id,
          voltageV: plus - minus,
          feedDropV,
          groundDropV,
          share,
        },
      ];
    });
    const [least] = drops.toSorted((a, b) => Math.abs(a.share) - Math.abs(b.share));
    return least ? [least] : [];
  });
}
