import { seeded } from '../random.ts';
import { annealed } from './annealed-crossings.ts';
import { everyOrder } from './every-order.ts';
import { crossingsAmong, Layer } from './laying.ts';
import {
  anyWayM,
  crossed,
  layingCost,
  pairOf,
  type Relaying,
  settled,
  shuffled,
  tightCost,
  wallByLot,
} from './relaying.ts';
import { crossings, type Route, type RouteWire } from './route.ts';
import type { Laid } from './tracks.ts';

/** Up to so many wires their crossings are to be the fewest that there are. */
export const fewWires = 8;

/** Path searches through all orders of few wires, for each one that ways are tried by lot with. */
const orderShare = 3;

/** How many crossings more than the best a layout may have that the search goes on from. */
const slack = 3;

/** What a search for fewer crossings comes to. */
export interface FewerCrossings {
  readonly laid: readonly Laid[];
  /** Crossings of the first layout that had as many wires as this one. */
  readonly first: number;
  /** True where no order of laying has fewer: every one was looked at or ruled out. */
  readonly everyOrder: boolean;
}

/**
 * Looks for ways, and an order of laying, with fewer crossings. Of up to eight wires ways are tried by lot, then every
 * order is looked at or ruled out; of more, some at a time are taken up and laid again. Bounded by a number of path
 * searches; what it returns never has more crossings than what it began with, unless it lays more wires or has wider
 * bends.
 */
export function fewerCrossings(
  layer: Layer,
  wires: readonly RouteWire[],
  begun: readonly Laid[],
  mostSearches: number,
): FewerCrossings {
  // A wire that has no way even by itself would make every order look as bad as the next.
  const order = wires.filter((wire) => begun.some((one) => one.wire === wire) || layer.lay(wire, []));
  const relaying = { layer, order, random: seeded(1), until: layer.searches + mostSearches };
  if (order.length <= fewWires)
    return throughOrders(relaying, byLot(relaying, begun, mostSearches), orderShare * mostSearches);
  const found = annealed(relaying, begun, mostSearches);
  return { ...found, everyOrder: crossingsAmong(found.laid) === 0 };
}

/** The best of all orders, where that is better than what was found. */
function throughOrders(
  relaying: Relaying,
  found: Omit<FewerCrossings, 'everyOrder'>,
  mostSearches: number,
): FewerCrossings {
  const { layer, order } = relaying;
  // Wires that do not lie yet count for nothing there, so that what lies can only be crossed more often later.
  const bare = new Layer(layer.grid, layer.rules);
  const costs = { crossingM: anyWayM, tight: tightCost };
  const { laid, complete } = everyOrder(bare, order, layingCost(relaying, found.laid), costs, mostSearches);
  layer.searches += bare.searches;
  const first = laid && laid.length > found.laid.length ? crossingsAmong(laid) : found.first;
  return { laid: laid ?? found.laid, first, everyOrder: complete };
}

/**
 * Two wires that cross are picked, and one of them is led where it does not cross the other, or off a line drawn by
 * lot, or laid before all that it crosses; or all is laid in another order. The rest then lies down again where it
 * crosses least. The search goes on from what it comes to where that is not much worse, never from the same crossings
 * twice.
 */
function byLot(
  relaying: Relaying,
  begun: readonly Laid[],
  mostSearches: number,
): Omit<FewerCrossings, 'everyOrder'> {
  const { layer, order, random, until } = relaying;
  let [best, first] = [settled(relaying, order, begun), crossingsAmong(begun)];
  let [current, least] = [best, layingCost(relaying, best)];
  const seen = new Set([pattern(best)]);
  // A round that asks only for what was asked before searches no path.
  for (let round = 0; least > 0 && layer.searches < until && round < mostSearches; round += 1) {
    const tried = laidOtherwise(relaying, current);
    const [cost, own] = [layingCost(relaying, tried), pattern(tried)];
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

/** Which wires cross, and how often: what tells two layouts apart. */
function pattern(laid: readonly Laid[]): string {
  return crossings(laid.map(({ route }) => route))
    .map(({ wires }) => wires.join(' '))
    .toSorted()
    .join(',');
}

/** How often each way to lay wires otherwise is taken, of all that are tried. */
const shares = { offTheOther: 0.2, offAWall: 0.1, before: 0.2 } as const;

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
