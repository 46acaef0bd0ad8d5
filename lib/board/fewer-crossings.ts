import { crossingsAmong, type Layer, tightBendsAmong } from './laying.ts';
import { type Random, seeded } from './random.ts';
import { crossingCount, crossings, type Route, type RouteWire } from './route.ts';
import type { TrackGrid } from './track-grid.ts';
import type { Laid } from './tracks.ts';

/** A crossing counts for more than any way round it on a board, metres. */
export const anyWayM = 100;

/** A wire that is laid at all is worth more than any number of crossings. */
const missingCost = 1e6;

/** A bend tighter than a wire may take is worse than any number of crossings. */
const tightCost = 1e3;

/** How many crossings more than the best a layout may have that the search goes on from. */
const slack = 3;

/** What a search for fewer crossings comes to. */
export interface FewerCrossings {
  readonly laid: readonly Laid[];
  /** Crossings of the first layout that had as many wires as this one. */
  readonly first: number;
}

/**
 * Looks for ways, and an order of laying, with fewer crossings. Two wires that cross are picked, and one of them is
 * led where it does not cross the other, or off a line drawn by lot, or laid before all that it crosses; the rest then
 * lies down again where it crosses least. Now and then all is laid in another order. The search goes on from what it
 * comes to where that is not much worse, never from the same crossings twice. Bounded by a number of path searches;
 * what it returns never has more crossings than what it began with, unless it lays more wires or has wider bends.
 */
export function fewerCrossings(
  layer: Layer,
  wires: readonly RouteWire[],
  begun: readonly Laid[],
  mostSearches: number,
): FewerCrossings {
  const random = seeded(1);
  // A wire that has no way even by itself would make every order look as bad as the next.
  const order = wires.filter((wire) => begun.some((one) => one.wire === wire) || layer.lay(wire, []));
  const relaying: Relaying = { layer, order, random, until: layer.searches + mostSearches };
  const costOf = (laid: readonly Laid[]) =>
    crossingsAmong(laid) + tightCost * tightBendsAmong(laid) + missingCost * (order.length - laid.length);
  let [best, first] = [settled(relaying, order, begun), crossingsAmong(begun)];
  let [current, least] = [best, costOf(best)];
  const seen = new Set([pattern(best)]);
  while (least > 0 && layer.searches < relaying.until) {
    const tried = laidOtherwise(relaying, current);
    const [cost, own] = [costOf(tried), pattern(tried)];
    if (cost < least) {
      if (tried.length > best.length) first = crossingsAmong(tried);
      [best, least] = [tried, cost];
    }
    if (!seen.has(own) && cost <= least + slack) current = tried;
    else if (random() < 0.1) current = best;
    seen.add(own);
  }
  return { laid: best, first };
}

/** What wires are laid again with. */
interface Relaying {
  readonly layer: Layer;
  readonly order: readonly RouteWire[];
  readonly random: Random;
  /** No path is searched for after so many. */
  readonly until: number;
}

/** Which wires cross, and how often: what tells two layouts apart. */
function pattern(laid: readonly Laid[]): string {
  return crossings(laid.map(({ route }) => route))
    .map(({ wires }) => wires.join(' '))
    .toSorted()
    .join(',');
}

/** How often each way to lay wires otherwise is taken, of all that are tried. */
const shares = { offTheOther: 0.45, offAWall: 0.2, before: 0.2 } as const;

/** The wires laid otherwise, in one of several ways drawn by lot. */
function laidOtherwise(relaying: Relaying, laid: readonly Laid[]): readonly Laid[] {
  const { layer, order, random } = relaying;
  const pair = pairOf(laid, random);
  const draw = random();
  const { offTheOther, offAWall, before } = shares;
  if (laid.length < order.length || !pair || draw >= offTheOther + offAWall + before) {
    const walls = [wallByLot(layer.grid, random), wallByLot(layer.grid, random)];
    return settled(relaying, order, layer.layInOrder(shuffled(order, random), [], anyWayM, walls));
  }
  const [own, other] = pair;
  if (draw >= offTheOther + offAWall) return laidBefore(relaying, own, laid);
  if (draw < offTheOther) return ledOff(relaying, own, other.route, laid);
  // Any wire: one that crosses none may leave no room to one that does.
  const any = laid[Math.floor(random() * laid.length)] ?? own;
  return ledOff(relaying, any, wallByLot(layer.grid, random), laid);
}

/** One wire led where it does not cross a line, the others laid again round it. */
function ledOff(relaying: Relaying, own: Laid, line: Route, laid: readonly Laid[]): readonly Laid[] {
  const rest = laid.filter((one) => one !== own);
  const route = relaying.layer.lay(own.wire, rest, anyWayM, [line]);
  if (!route) return laid;
  const others = relaying.order.filter((wire) => wire !== own.wire);
  return settled(relaying, others, [...rest, { wire: own.wire, route }]);
}

/** One wire laid before all that it crosses, these in any order. */
function laidBefore(relaying: Relaying, own: Laid, laid: readonly Laid[]): readonly Laid[] {
  const { layer, order, random } = relaying;
  const crossing = crossed(own.wire, laid);
  const free = laid.filter((one) => one !== own && !crossing.includes(one));
  const again = shuffled(
    crossing.map(({ wire }) => wire),
    random,
  );
  return settled(relaying, order, layer.layInOrder([own.wire, ...again], free, anyWayM));
}

/** A straight line on the grid, drawn by lot: wires that keep off it find other ways. */
function wallByLot({ xs, ys }: TrackGrid, random: Random): Route {
  const pick = (lines: readonly number[]) => lines[Math.floor(random() * lines.length)] ?? 0;
  const level = random() < 0.5;
  const from = { xM: pick(xs), yM: pick(ys) };
  const to = level ? { ...from, xM: pick(xs) } : { ...from, yM: pick(ys) };
  return { wire: '', points: [from, to], lengthM: 0, layer: 'signal', bends: 0 };
}

/** Two laid wires that cross, drawn by lot; null where none do. */
function pairOf(laid: readonly Laid[], random: Random): readonly [Laid, Laid] | null {
  const all = crossings(laid.map(({ route }) => route));
  const crossing = all[Math.floor(random() * all.length)];
  const [one, other] = laid.filter(({ route }) => crossing?.wires.includes(route.wire));
  if (!one || !other) return null;
  return random() < 0.5 ? [one, other] : [other, one];
}

/** Lays the wires that cross again, one by one, until that takes away no more crossings. */
function settled(
  { layer, until }: Relaying,
  order: readonly RouteWire[],
  begun: readonly Laid[],
): readonly Laid[] {
  let laid = begun;
  for (let before = Infinity; layer.searches < until; ) {
    const now = crossingsAmong(laid);
    if (now === 0 || now >= before) break;
    before = now;
    const crossing = order.filter((wire) => crossed(wire, laid).length > 0);
    laid = layer.layAgain(crossing, laid, anyWayM);
  }
  return laid;
}

/** The wires that one crosses. */
function crossed(wire: RouteWire, laid: readonly Laid[]): readonly Laid[] {
  const own = laid.find((one) => one.wire === wire);
  return own ? laid.filter((one) => one !== own && crossingCount(own.route, [one.route]) > 0) : [];
}

/** Another order, each as likely as the next (Fisher and Yates). */
function shuffled<T>(list: readonly T[], random: Random): T[] {
  const mixed = [...list];
  for (let last = mixed.length - 1; last > 0; last -= 1) {
    const pick = Math.floor(random() * (last + 1));
    const [a, b] = [mixed[last], mixed[pick]];
    if (a !== undefined && b !== undefined) [mixed[last], mixed[pick]] = [b, a];
  }
  return mixed;
}
