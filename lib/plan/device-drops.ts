import type { DeviceDrop, OperatingPoint } from '../model/plan/index.ts';
import type { Traced } from '../model/trace.ts';
import { traced } from '../power/traced.ts';
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

/** The working of every drop of a solved point, by its id path: from which two terminals it is the difference. */
export function dropWorkings(
  input: NetworkInput,
  point: OperatingPoint,
): (readonly [string, Traced<number>])[] {
  const voltage = new Map(point.nodes.map(({ id, voltageV }) => [id, voltageV ?? 0]));
  return deviceDrops(input, point).flatMap(({ item, source, feedDropV, groundDropV }) => {
    const own = input.paths.fed.find(({ device }) => device.id === item);
    const battery = input.circuit.sources.find(({ device }) => device.id === source);
    if (!own || !battery) return [];
    const at = `power.drops.${point.name}.${item}`;
    const between = (value: number, high: string, low: string): Traced<number> =>
      traced(value, 'V', {
        rule: 'drop',
        formula: `V(${high}) - V(${low}); each element on the way drops its current times its resistance`,
        citation: "Kirchhoff's voltage law; the elements of the network stand in its table",
        inputs: [
          [`V(${high})`, voltage.get(high) ?? 0, 'V'],
          [`V(${low})`, voltage.get(low) ?? 0, 'V'],
        ],
      });
    return [
      [`${at}.feedDropV`, between(feedDropV, battery.positive, own.from)] as const,
      [`${at}.groundDropV`, between(groundDropV, own.to, battery.negative)] as const,
    ];
  });
}
