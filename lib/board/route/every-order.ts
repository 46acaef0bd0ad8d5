import { type Layer, tightBendsAmong } from './laying.ts';
import { crossingCount, type RouteWire } from './route.ts';
import type { Laid } from './tracks.ts';

/** What a search through all orders came to. */
export interface OrderSearch {
  /** The best of all orders, where it is better than the bound; null where none is. */
  readonly laid: readonly Laid[] | null;
  /** True where every order was looked at or could be ruled out; false where the path searches ran out. */
  readonly complete: boolean;
}

/** What one more crossing counts for, and what a bend tighter than its wire may take. */
export interface OrderCosts {
  readonly crossingM: number;
  readonly tight: number;
}

/**
 * Lays wires in every order, each where it crosses fewest of those that lie already, and keeps the order with the
 * fewest crossings. Branch and bound: what a wire crosses of those that lie it crosses in every later place of the order
 * too, so an order is not followed once what lies, and the least that each other wire adds by itself, reach the bound.
 * Orders that come to the same wires in the same tracks are followed once. `bound`: only what costs less counts.
 */
export function everyOrder(
  layer: Layer,
  wires: readonly RouteWire[],
  bound: number,
  costs: OrderCosts,
  mostSearches: number,
): OrderSearch {
  const until = layer.searches + mostSearches;
  const seen = new Set<string>();
  let [best, least]: [readonly Laid[] | null, number] = [null, bound];
  const follow = (laid: readonly Laid[], left: readonly RouteWire[], sum: number): boolean => {
    if (left.length === 0) {
      [best, least] = [laid, sum];
      return true;
    }
    if (layer.searches >= until) return false;
    const key = layer.keyOf(laid);
    if (seen.has(key)) return true;
    seen.add(key);
    const next = nextOf(layer, laid, left, costs);
    // A wire that finds no way past these finds none past more of them.
    if (!next) return true;
    const rest = next.reduce((all, { adds }) => all + adds, 0);
    if (sum + rest >= least) return true;
    return next.every(({ one, adds }) => {
      if (sum + rest >= least) return true;
      return follow(
        [...laid, one],
        left.filter((wire) => wire !== one.wire),
        sum + adds,
      );
    });
  };
  const complete = follow([], wires, 0);
  return { laid: best, complete };
}

/** Each wire that may be laid next and what it adds, the least first; null where one has no way. */
function nextOf(
  layer: Layer,
  laid: readonly Laid[],
  left: readonly RouteWire[],
  { crossingM, tight }: OrderCosts,
): readonly { readonly one: Laid; readonly adds: number }[] | null {
  const routes = laid.map(({ route }) => route);
  const next = left.flatMap((wire) => {
    const route = layer.lay(wire, laid, crossingM);
    if (!route) return [];
    const one = { wire, route };
    return [{ one, adds: crossingCount(route, routes) + tight * tightBendsAmong([one]) }];
  });
  return next.length < left.length ? null : next.toSorted((a, b) => a.adds - b.adds);
}
