import type { OperatingPoint } from '../../../model/plan/index.ts';
import { voltsAllowed, voltsLost } from '../../../model/printed/told.ts';
import { wholeUp } from '../../../model/quantity/safe-rounding.ts';
import { candidatesFor } from '../../wiring/cable-candidates.ts';
import { deviceDrops } from '../feed-and-ground-drop.ts';
import { groundLossV, type WholeDrop, wholeDrops } from '../known-drops.ts';
import { type NetworkInput, operatingPoints, solvePoint } from '../operating-points.ts';
import { nextSizeMm2 } from './next-size.ts';
import { entersPorts, fitsPorts } from './ports-fit.ts';
import type { PowerSizing } from './power-sizing.ts';
import { type SizedPower, sizePower } from './size-power.ts';

/** Rounds that growing conductors may take; each one grows a conductor by one size, so more would be a bug. */
const mostRounds = 400;

/** True where both terminals of a link take a size. */
type Fits = typeof entersPorts;

/**
 * Sizes the supply side so that every device keeps the drop limits at rated power, feed and ground solved together
 * in the network. While a device misses a limit, the conductor on its way that drops most grows by one size, as far as
 * its ports take it bare. Reducers are taken only where with them fewer devices miss a limit: thicker leads that leave
 * the drop over it are paid for in vain.
 */
export function sizeForDrop(sizing: PowerSizing): SizedPower {
  const bare = grown(sizing, (job, _, link, areaMm2) => fitsPorts(job, link, areaMm2));
  if (bare.missing === 0 || !bare.refused) return bare.sized;
  const least = sizing.least.copy();
  const reduced = grown({ ...sizing, least }, entersPorts);
  if (reduced.missing >= bare.missing) return bare.sized;
  sizing.least.adopt(least.held());
  return reduced.sized;
}

/** What growing came to, and how many devices still miss a limit. */
interface Grown {
  readonly sized: SizedPower;
  readonly missing: number;
  /** True where a port kept a conductor from growing: without that, reducers change nothing. */
  readonly refused: boolean;
}

function grown(sizing: PowerSizing, fits: Fits): Grown {
  const maxed = new Set<string>();
  let refused = false;
  const asked: Fits = (...end) => {
    const does = fits(...end);
    refused ||= !does;
    return does;
  };
  for (let round = 0; round < mostRounds; round += 1) {
    const sized = sizePower(sizing);
    const network: NetworkInput = { ...sizing, ...sized };
    const point = solvePoint(network, operatingPoints[0]);
    const { worst, missing } = missedDrops(network, point);
    if (worst && growOne(sizing, sized, point, worst, maxed, asked)) continue;
    if (!raiseFlows(sizing, sized, point)) return { sized, missing, refused };
  }
  throw new Error('The conductors did not settle while growing for their drop.');
}

/**
 * Holds each fuse against what flows through it at the voltages that its devices really get: constant power draws more
 * the lower they are. True where a fuse is to be chosen anew for it.
 */
function raiseFlows(
  { least }: PowerSizing,
  { fuses }: SizedPower,
  { state, elements }: OperatingPoint,
): boolean {
  if (state !== 'solved') return false;
  const flows = new Map(elements.map(({ id, currentA }) => [id, Math.abs(currentA ?? 0)]));
  let raised = false;
  for (const { edge, ratedA } of fuses) {
    const flowA = wholeUp((flows.get(`${edge.id}:fuse`) ?? 0) * 10) / 10;
    if (flowA <= ratedA) continue;
    least.raiseFlow(edge.id, flowA);
    raised = true;
  }
  return raised;
}

interface Miss {
  readonly item: string;
  readonly side: 'ground' | 'both';
  readonly text: string;
}

/** The device that misses its limits most, and how many miss one. */
function missedDrops(
  network: NetworkInput,
  point: OperatingPoint,
): { readonly worst: Miss | null; readonly missing: number } {
  const { rules } = network.job;
  const limit = rules['drop-limit'].value;
  const groundLimitV = rules['ground-drop-limit'].value;
  const excess = (drop: WholeDrop) => Math.max(drop.share / limit, groundLossV(drop) / groundLimitV);
  const drops = wholeDrops(deviceDrops(network, point));
  const [worst] = drops.toSorted((a, b) => excess(b) - excess(a));
  if (point.state === 'no-solution') {
    const heaviest = network.loads.toSorted((a, b) => b.ratedA - a.ratedA)[0];
    const text = `${heaviest?.item} could not be fed`;
    return {
      worst: heaviest ? { item: heaviest.item, side: 'both', text } : null,
      missing: network.loads.length,
    };
  }
  const missing = drops.filter((drop) => excess(drop) > 1).length;
  return { worst: worst && missing > 0 ? missOf(worst, network) : null, missing };
}

function missOf(worst: WholeDrop, { job }: NetworkInput): Miss {
  const limit = job.rules['drop-limit'].value;
  const groundLimitV = job.rules['ground-drop-limit'].value;
  const onlyGround = worst.share <= limit;
  const foundV = onlyGround ? groundLossV(worst) : worst.feedDropV + worst.groundDropV + (worst.liftedV ?? 0);
  // The share is the drop over the voltage for sizing, whose allowed share it is held against.
  const allowedV = onlyGround ? groundLimitV : (limit * foundV) / worst.share;
  return {
    item: worst.item,
    side: onlyGround ? 'ground' : 'both',
    text: `${worst.item} would lose ${voltsLost(foundV)} ${onlyGround ? 'on the ground side' : 'on feed and ground'} at rated power, ${voltsAllowed(allowedV)} are allowed`,
  };
}

/** Grows the conductor that drops most on the way of a device; false where none can grow. */
function growOne(
  { job, devices, circuit, paths, least, sizer }: PowerSizing,
  { conductors }: SizedPower,
  point: OperatingPoint,
  miss: Miss,
  maxed: Set<string>,
  fits: Fits,
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
  for (const { link, role, cable, judged, lengthM } of onWay) {
    const next = nextSizeMm2(candidatesFor(job, link, role), cable, lengthM);
    // A port may not take the next size; growing on would only turn a drop into a conductor that fits nowhere.
    const ports = judged?.misses.some(({ limit }) => limit === 'port') ?? false;
    const bends = next !== null && next < sizer.underMm2(link.id) / 1.001;
    if (next !== null && bends && !ports && fits(job, devices, link, next)) {
      least.raise(link.id, next, `with ${cable.size.label} ${miss.text}`);
      return true;
    }
    maxed.add(link.id);
  }
  return false;
}
