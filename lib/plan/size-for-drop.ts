import type { OperatingPoint } from '../model/plan/index.ts';
import { candidatesFor } from './cable-candidates.ts';
import { deviceDrops } from './device-drops.ts';
import { type NetworkInput, operatingPoints, solvePoint } from './operating-points.ts';
import { fitsPorts } from './ports-fit.ts';
import { type PowerSizing, type SizedPower, sizePower } from './size-power.ts';
import { sizingVoltageV } from './sizing-voltage.ts';
import { type WholeDrop, wholeDrops } from './whole-drops.ts';

/** Rounds that growing conductors may take; each one grows a conductor by one size, so more would be a bug. */
const mostRounds = 400;

/**
 * Sizes the 12 V side so that every device keeps the drop limits at rated power, feed and ground solved together
 * in the network. While a device misses a limit, the conductor on its way that drops most grows by one size.
 */
export function sizeForDrop(sizing: PowerSizing): SizedPower {
  const maxed = new Set<string>();
  for (let round = 0; round < mostRounds; round += 1) {
    const sized = sizePower(sizing);
    const network: NetworkInput = { ...sizing, ...sized };
    const point = solvePoint(network, operatingPoints[0]);
    const worst = worstDevice(network, point);
    if (!worst) return sized;
    if (!growOne(sizing, sized, point, worst, maxed)) return sized;
  }
  throw new Error('The conductors did not settle while growing for their drop.');
}

interface Miss {
  readonly item: string;
  readonly side: 'ground' | 'both';
  readonly text: string;
}

function worstDevice(network: NetworkInput, point: OperatingPoint): Miss | null {
  const { rules } = network.job;
  const limit = rules['drop-limit'].value;
  const groundLimitV = rules['ground-drop-limit'].value;
  const excess = ({ share, groundDropV }: WholeDrop) => Math.max(share / limit, groundDropV / groundLimitV);
  const [worst] = wholeDrops(deviceDrops(network, point)).toSorted((a, b) => excess(b) - excess(a));
  if (point.state === 'no-solution') {
    const heaviest = network.loads.toSorted((a, b) => b.ratedA - a.ratedA)[0];
    return heaviest ? { item: heaviest.item, side: 'both', text: `${heaviest.item} could not be fed` } : null;
  }
  if (!worst || excess(worst) <= 1) return null;
  const onlyGround = worst.share <= limit;
  const volts = (value: number) => `${(Math.ceil(value * 1000) / 1000).toString()} V`;
  const allowedV = onlyGround ? groundLimitV : limit * sizingVoltageV(network.job);
  const foundV = onlyGround ? worst.groundDropV : worst.feedDropV + worst.groundDropV;
  return {
    item: worst.item,
    side: onlyGround ? 'ground' : 'both',
    text: `${worst.item} would lose ${volts(foundV)} ${onlyGround ? 'on the ground side' : 'on feed and ground'} at rated power, ${volts(allowedV)} are allowed`,
  };
}

/** Grows the conductor that drops most on the way of a device; false where none can grow. */
function growOne(
  { job, circuit, paths, least }: PowerSizing,
  { conductors }: SizedPower,
  point: OperatingPoint,
  miss: Miss,
  maxed: Set<string>,
): boolean {
  const dropV = new Map(
    point.elements.map(({ of, kind, dropV: drop, ohm }) => [
      kind === 'conductor' ? of : '',
      Math.abs(drop ?? ohm ?? 0),
    ]),
  );
  const onWay = circuit.edges
    .filter((edge) => paths.downstream(edge).some(({ device }) => device.id === miss.item))
    .flatMap(({ id }) => conductors.get(id) ?? [])
    .filter(
      ({ chosen, role, link }) =>
        chosen === 'computed' && !maxed.has(link.id) && (miss.side === 'both' || role === 'ground'),
    )
    .toSorted((a, b) => (dropV.get(b.link.id) ?? 0) - (dropV.get(a.link.id) ?? 0));
  for (const { link, role, cable, judged } of onWay) {
    const areas = candidatesFor(job, link, role).map(({ size }) => size.areaMm2);
    const next = Math.min(...areas.filter((area) => area > cable.size.areaMm2 * 1.001));
    // A port may not take the next size; growing on would only turn a drop into a conductor that fits nowhere.
    const ports = judged?.misses.some(({ limit }) => limit === 'port') ?? false;
    if (Number.isFinite(next) && !ports && fitsPorts(job, link, next)) {
      least.raise(link.id, next, `with ${cable.size.label} ${miss.text}`);
      return true;
    }
    maxed.add(link.id);
  }
  return false;
}
