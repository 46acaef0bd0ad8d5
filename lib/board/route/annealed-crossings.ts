import type { Random } from '../random.ts';
import { crossingsAmong } from './laying.ts';
import { anyWayM, crossed, layingCost, pairOf, type Relaying, shuffled, wallByLot } from './relaying.ts';
import type { Route } from './route.ts';
import type { Laid } from './tracks.ts';

/** Crossings more that the search readily goes on with, at its beginning and at its end (tried on the demo boards). */
const [hot, cold] = [3, 0.3];

/** Wires that are taken up at once, at most. */
const mostTakenUp = 4;

/** How often what is laid again is kept off a line, so that it finds another way than before. */
const offALine = 0.5;

/**
 * Fewer crossings of many wires: one that crosses another is taken up, with others that it crosses or any, and they
 * are laid again in an order drawn by lot. What that comes to is gone on from as in simulated annealing (Kirkpatrick,
 * Gelatt and Vecchi 1983). Returns the best layout, and the crossings of the first one with as many wires.
 */
export function annealed(
  relaying: Relaying,
  begun: readonly Laid[],
  mostSearches: number,
): { readonly laid: readonly Laid[]; readonly first: number } {
  const { layer, random, until } = relaying;
  let [best, first] = [begun, crossingsAmong(begun)];
  let [current, cost] = [begun, layingCost(relaying, begun)];
  let least = cost;
  // A round that asks only for what was asked before searches no path.
  for (let round = 0; least > 0 && layer.searches < until && round < mostSearches; round += 1) {
    const heat = hot * (cold / hot) ** (1 - (until - layer.searches) / mostSearches);
    const tried = laidAgain(relaying, current);
    const own = layingCost(relaying, tried);
    if (own < least) {
      if (tried.length > best.length) first = crossingsAmong(tried);
      [best, least] = [tried, own];
    }
    if (own <= cost || random() < Math.exp((cost - own) / heat)) [current, cost] = [tried, own];
  }
  return { laid: best, first };
}

/** Some wires taken up and laid again, and with them those that have found no way yet. */
function laidAgain({ layer, order, random }: Relaying, laid: readonly Laid[]): readonly Laid[] {
  const pair = pairOf(laid, random);
  const up = pair ? takenUp(pair[0], laid, random) : [];
  const rest = laid.filter((one) => !up.includes(one));
  const missing = order.filter((wire) => !laid.some((one) => one.wire === wire));
  const again = shuffled([...up.map(({ wire }) => wire), ...missing], random);
  const draw = random();
  const lines: Route[] = [];
  if (pair && draw < offALine / 2) lines.push(pair[1].route);
  else if (draw < offALine) lines.push(wallByLot(layer.grid, random));
  return layer.layInOrder(again, rest, anyWayM, lines);
}

/** A wire, some that it crosses, and any others, up to a number drawn by lot. */
function takenUp(own: Laid, laid: readonly Laid[], random: Random): Laid[] {
  const count = 1 + Math.floor(random() * mostTakenUp);
  const crossing = shuffled(crossed(own.wire, laid), random).slice(0, Math.floor(random() * count));
  const others = shuffled(laid, random).filter((one) => one !== own && !crossing.includes(one));
  return [own, ...crossing, ...others].slice(0, count);
}
