import { type Random, seeded } from '../../random.ts';
import { touches } from '../blocked-wire.ts';
import type { ClearWays } from '../clear-way.ts';
import { shuffled } from '../relaying.ts';
import type { Route, RouteWire } from '../route.ts';
import type { Laid } from '../tracks.ts';
import { Dressed, type DressPrices, priceOf } from './dressed.ts';
import type { Dresser, TollOf } from './dresser.ts';

/** What wires are dressed with. */
export interface DressKit {
  readonly dresser: Dresser;
  readonly ways: ClearWays;
  readonly prices: DressPrices;
  /** Power and signal side by side are to keep so far apart (m). */
  readonly apartM: number;
  /** What its lots are drawn from. */
  readonly seed: number;
}

/** What is dearer by so much is readily gone on with, at the beginning and at the end (m; tried on the demo boards). */
const [hotM, coldM] = [0.15, 0.01];
/** Wires that are taken up at once, at most. */
const mostTakenUp = 5;
/** How often some wires, each with what likelihood, are dearer to cross for once, and by how many crossings at most. */
const [tollOften, tollShare, mostToll] = [0.7, 0.25, 1.5];

const noToll: TollOf = () => 0;

/**
 * Lays wires in an order past those that lie already. One that is shut in takes up what stands in its way; what finds no
 * way so either is left out.
 */
export function layInTurn(
  kit: DressKit,
  wires: readonly RouteWire[],
  begun: readonly Laid[],
): readonly Laid[] {
  let laid = begun;
  wires.forEach((wire, at) => {
    const open = wires.slice(at + 1);
    const own = layOne(kit, wire, laid, open);
    laid = own ? [...laid, own] : wayMade(kit, wire, laid, open);
  });
  return laid;
}

/** Takes up what stands in the way of a wire, lays it, then those; as it was where one of them finds none. */
function wayMade(
  kit: DressKit,
  wire: RouteWire,
  laid: readonly Laid[],
  open: readonly RouteWire[],
): readonly Laid[] {
  const direct = layOne(kit, wire, [], open);
  if (!direct) return laid;
  const inWay = laid.filter((one) => touches(direct.route, one, wire.diameterM));
  const again = [wire, ...inWay.map((one) => one.wire)];
  let all: readonly Laid[] = laid.filter((one) => !inWay.includes(one));
  for (const [nth, one] of again.entries()) {
    const next = layOne(kit, one, all, [...again.slice(nth + 1), ...open]);
    if (!next) return laid;
    all = [...all, next];
  }
  return all;
}

/** A wire past others, where it has a way that is clear and no longer than the wire. */
function layOne(
  { dresser, ways, prices }: DressKit,
  wire: RouteWire,
  others: readonly Laid[],
  open: readonly RouteWire[],
  tollOf: TollOf = noToll,
): Laid | null {
  const route = dresser.lay({ wire, others, open, price: priceOf(wire, prices), tollOf });
  if (!route || route.lengthM > (wire.longestM ?? Infinity)) return null;
  return ways.isClear(wire, route, others) ? { wire, route } : null;
}

/**
 * Dresses wires that lie: some are taken up, such that cross each other first, and laid again in an order drawn by lot,
 * now and then as if to cross some others were dearer. What that comes to is gone on from as in simulated annealing
 * (Kirkpatrick, Gelatt and Vecchi 1983). Bounded by a number of path searches; never dearer than what it began with.
 */
export function dressed(kit: DressKit, begun: readonly Laid[], mostSearches: number): readonly Laid[] {
  const { dresser, prices, apartM, seed } = kit;
  const random = seeded(seed);
  const until = dresser.searches + mostSearches;
  let current = new Dressed(begun, prices, apartM);
  let best = current;
  while (begun.length > 0 && dresser.searches < until) {
    const heatM = hotM * (coldM / hotM) ** (1 - (until - dresser.searches) / mostSearches);
    const changes = laidAgain(kit, current, random);
    if (!changes) continue;
    const tried = current.with(changes);
    const byM = tried.priceM - current.priceM;
    if (tried.priceM < best.priceM - 1e-9) best = tried;
    if (byM <= 0 || random() < Math.exp(-byM / heatM)) current = tried;
  }
  return best.laid;
}

/** Some wires laid again; null where one of them finds no way any more. */
function laidAgain(kit: DressKit, current: Dressed, random: Random): Map<number, Route> | null {
  const up = takenUp(current, random);
  const tolls = new Map<RouteWire, number>();
  if (up.length === 1 || random() < tollOften)
    for (const { wire } of current.laid) if (random() < tollShare) tolls.set(wire, random() * mostToll);
  const changes = new Map<number, Route>();
  let down = current.laid.filter((_, at) => !up.includes(at));
  const again = shuffled(up, random);
  for (const [nth, at] of again.entries()) {
    const wire = current.laid[at]?.wire;
    const open = again.slice(nth + 1).flatMap((one) => current.laid[one]?.wire ?? []);
    const one = wire && layOne(kit, wire, down, open, (other) => tolls.get(other) ?? 0);
    if (!one) return null;
    down = [...down, one];
    changes.set(at, one.route);
  }
  return changes;
}

/** Some wires: one by lot, of those that cross others more readily, then such that it crosses, and any. */
function takenUp(current: Dressed, random: Random): number[] {
  const places = current.laid.map((_, at) => at);
  const crossing = (at: number, others: readonly number[]) =>
    others.reduce((sum, other) => sum + (other === at ? 0 : current.crossed(at, other)), 0);
  const wanted = Math.min(places.length, 1 + Math.floor(random() * mostTakenUp));
  const up = [
    drawn(
      places.map((at) => 0.5 + crossing(at, places)),
      random,
    ),
  ];
  while (up.length < wanted) {
    const weights = places.map((at) => (up.includes(at) ? 0 : 0.1 + crossing(at, up)));
    up.push(drawn(weights, random));
  }
  return up;
}

/** A place drawn by lot, each as likely as its weight. */
function drawn(weights: readonly number[], random: Random): number {
  let left = random() * weights.reduce((sum, weight) => sum + weight, 0);
  for (const [at, weight] of weights.entries()) {
    left -= weight;
    if (left < 0) return at;
  }
  return weights.length - 1;
}
