import { ratedPointName } from '../../model/operating-points.ts';
import type { DeviceDrop, DropPart, OperatingPoint } from '../../model/plan/index.ts';
import { type Traced, traced } from '../../model/trace.ts';
import type { CircuitLoad, CircuitSource } from './circuit/circuit.ts';
import { dropParts } from './drop-parts.ts';
import type { NetworkInput } from './operating-points.ts';
import { sizingVoltageAt } from './sizing-voltage.ts';

/**
 * Voltage at each device of a solved point, feed and ground drop told apart. They count from the battery that
 * feeds the device with the least loss: feed = V(battery +) - V(device +), ground = V(device -) - V(battery -). On a
 * side on which conductors join the device to no battery there is no drop to tell.
 */
export function deviceDrops(input: NetworkInput, point: OperatingPoint): DeviceDrop[] {
  const { circuit, paths, loads } = input;
  const voltage = new Map(point.nodes.map(({ id, voltageV }) => [id, voltageV]));
  // Drops are judged at rated power, so there they are told in their parts.
  const between = point.name === ratedPointName ? dropParts(point) : null;
  return loads.flatMap((load): DeviceDrop[] => {
    const own = paths.fed.find(({ device }) => device.id === load.item);
    const [plus, minus] = [voltage.get(own?.from ?? ''), voltage.get(own?.to ?? '')];
    if (!own || plus === undefined || plus === null || minus === undefined || minus === null) return [];
    const live = paths.joinedTo(own.from);
    const grounded = paths.joinedTo(own.to);
    const drops = feedersOf(circuit.sources, live).flatMap((battery): DeviceDrop[] => {
      const { positive, negative } = battery;
      const [high, low] = [voltage.get(positive), voltage.get(negative)];
      if (high === undefined || high === null || low === undefined || low === null) return [];
      const feedDropV = live.has(positive) ? high - plus : null;
      const groundDropV = grounded.has(negative) ? minus - low : null;
      const whole = feedDropV !== null && groundDropV !== null ? feedDropV + groundDropV : null;
      // What other currents lift on the way, such as those that charge the battery, is no gain to rely on.
      const known = whole !== null && between ? between : null;
      const feed = known?.(battery.positive, own.from) ?? [];
      const ground = known?.(own.to, battery.negative) ?? [];
      const groundLiftedV = liftedBy(ground);
      const liftedV = liftedBy(feed) + groundLiftedV;
      const reason = unknownText(own, battery, { live: feedDropV !== null, ground: groundDropV !== null });
      return [
        {
          point: point.name,
          item: load.item,
          source: battery.device.id,
          voltageV: plus - minus,
          feedDropV,
          groundDropV,
          share:
            whole === null ? null : (whole + liftedV) / sizingVoltageAt(input.job, paths.islands, own.from),
          ...(reason === null ? {} : { unknown: reason }),
          ...(known && { parts: inOrder([...feed, ...ground]), liftedV, groundLiftedV }),
        },
      ];
    });
    const [least] = drops.toSorted((a, b) => lossOf(a) - lossOf(b));
    return least ? [least] : [];
  });
}

/** What other currents lift on a way, volts. */
function liftedBy(parts: readonly DropPart[]): number {
  return parts.reduce((sum, { dropV }) => sum + Math.max(0, -dropV), 0);
}

/** Parts of a drop, largest first. */
function inOrder(parts: readonly DropPart[]): DropPart[] {
  return parts.toSorted((a, b) => b.dropV - a.dropV || (a.of < b.of ? -1 : 1));
}

/** What drops count from: the batteries; where conductors join a device to none, the charger that feeds it in their place. */
function feedersOf(sources: readonly CircuitSource[], live: ReadonlySet<string>): readonly CircuitSource[] {
  const batteries = sources.filter(({ type }) => type === 'battery');
  if (batteries.some(({ positive }) => live.has(positive))) return batteries;
  const chargers = sources.filter(({ type, positive }) => type === 'charger' && live.has(positive));
  return chargers.length > 0 ? chargers : batteries;
}

/** A battery that the device is joined to on both sides goes before one that it is not. */
function lossOf({ share, feedDropV }: DeviceDrop): number {
  if (share !== null) return Math.abs(share);
  return feedDropV === null ? Number.POSITIVE_INFINITY : Number.MAX_VALUE;
}

/** Why a drop is not known; null where both are. */
function unknownText(
  { from, to }: CircuitLoad,
  { positive, negative }: CircuitSource,
  joined: { readonly live: boolean; readonly ground: boolean },
): string | null {
  const missing = [
    ...(joined.live
      ? []
      : [`the drop of the feed is not known, since no conductor joins ${from} to ${positive}`]),
    ...(joined.ground
      ? []
      : [`the drop of the ground is not known, since no conductor joins ${to} to ${negative}`]),
  ];
  return missing.length === 0 ? null : missing.join('; ');
}

/** The working of every drop of a solved point, by its id path: from which two terminals it is the difference. */
export function dropWorkings(
  input: NetworkInput,
  point: OperatingPoint,
): (readonly [string, Traced<number>])[] {
  const voltage = new Map(point.nodes.map(({ id, voltageV }) => [id, voltageV ?? 0]));
  return deviceDrops(input, point).flatMap(({ item, source, feedDropV, groundDropV, share, liftedV }) => {
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
    const feed = feedDropV === null ? [] : [between(feedDropV, battery.positive, own.from)];
    const ground = groundDropV === null ? [] : [between(groundDropV, own.to, battery.negative)];
    const both =
      share === null
        ? []
        : [
            shareTrace(
              share,
              [feedDropV, groundDropV, liftedV],
              sizingVoltageAt(input.job, input.paths.islands, own.from),
            ),
          ];
    return [
      ...feed.map((drop) => [`${at}.feedDropV`, drop] as const),
      ...ground.map((drop) => [`${at}.groundDropV`, drop] as const),
      ...both.map((sum) => [`${at}.share`, sum] as const),
    ];
  });
}

/** Both drops together, as a share of the voltage for sizing. */
function shareTrace(
  share: number,
  [feedV, groundV, liftedV]: readonly (number | null | undefined)[],
  sizingV: number,
): Traced<number> {
  return traced(share, '', {
    rule: 'drop-share',
    formula: '(Uf + Ug + Ul) / U',
    citation:
      'feed plus return, against the voltage for sizing; Ul: what other currents lift on the way, which is not relied on',
    inputs: [
      ['Uf', feedV ?? 0, 'V'],
      ['Ug', groundV ?? 0, 'V'],
      ['Ul', liftedV ?? 0, 'V'],
      ['U', sizingV, 'V'],
    ],
  });
}
