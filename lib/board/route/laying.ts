import { tightestBend } from './bends.ts';
import { LayingKeys } from './laying-keys.ts';
import {
  countCrossings,
  crossingCount,
  isPoint,
  outFrom,
  type Route,
  type RouteWire,
  routeThrough,
} from './route.ts';
import { type RouteCosts, RouteSearch, type RouteTask } from './route-search.ts';
import type { TrackGrid } from './track-grid.ts';
import { type Laid, TrackMarks } from './tracks.ts';

/** What wires are laid by. */
export interface LayingRules extends RouteCosts {
  /** Free room between a wire and a part, a fixing or an edge, metres. */
  readonly clearanceM: number;
  /** Power and signal side by side keep this apart where there is a way, metres. */
  readonly powerToSignalM: number;
}

/** How many crossings laid wires have among each other. */
export function crossingsAmong(laid: readonly Laid[]): number {
  return countCrossings(laid.map(({ route }) => route));
}

/** True where a wire is bent more tightly than it may be. */
function isTight({ wire, route }: Laid): boolean {
  return tightestBend(route, wire.bendRadiusM ?? 0) !== null;
}

/** How many laid wires are bent more tightly than they may be. */
export function tightBendsAmong(laid: readonly Laid[]): number {
  return laid.filter(isTight).length;
}

/** True where a wire laid anew past others is bent no more tightly than before, and crosses no more of them. */
function asGood(one: Laid, old: Laid, others: readonly Laid[]): boolean {
  const routes = others.map(({ route }) => route);
  const [before, now] = [isTight(old), isTight(one)];
  return before === now ? crossingCount(one.route, routes) <= crossingCount(old.route, routes) : before;
}

/**
 * Lays single wires on a grid past those that lie already, and counts the path searches that this takes. `wires`: all
 * that are to lie on it, so that none shuts in the terminals of one that comes later.
 */
export class Layer {
  searches = 0;
  readonly grid: TrackGrid;
  readonly rules: LayingRules;
  readonly #wires: readonly RouteWire[];
  readonly #paths: RouteSearch;
  readonly #marks: TrackMarks;
  readonly #keys = new LayingKeys();
  readonly #known = new Map<string, Route | null>();

  constructor(grid: TrackGrid, rules: LayingRules, wires: readonly RouteWire[] = []) {
    this.grid = grid;
    this.rules = rules;
    this.#wires = wires;
    this.#paths = new RouteSearch(grid);
    this.#marks = new TrackMarks(grid);
  }

  /**
   * The cheapest route of a wire past others; null where there is no way. `crossingM`: what a crossing counts for.
   * What was asked before is not searched for again.
   */
  lay(
    wire: RouteWire,
    others: readonly Laid[],
    crossingM: number = this.rules.crossingM,
    avoid: readonly Route[] = [],
  ): Route | null {
    const key = this.#keys.of(wire, others, crossingM, avoid);
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const route = this.#layAnew(wire, others, crossingM, avoid);
    this.#known.set(key, route);
    return route;
  }

  /** The same for wires that lie in the same tracks, in whatever order. */
  keyOf(laid: readonly Laid[]): string {
    return this.#keys.ofLaid(laid);
  }

  #layAnew(
    wire: RouteWire,
    others: readonly Laid[],
    crossingM: number,
    avoid: readonly Route[],
  ): Route | null {
    const search = this.#task(wire, others, Infinity, avoid);
    const costs = { ...this.rules, crossingM };
    const points = this.#paths.find({ ...search, costs });
    return points && routeThrough(wire, points);
  }

  /** How one wire is searched for; `throughM`: the cost of each metre through what is in the way. */
  #task(wire: RouteWire, others: readonly Laid[], throughM: number, avoid: readonly Route[] = []): RouteTask {
    this.searches += 1;
    const { clearanceM, powerToSignalM } = this.rules;
    // With half a step of room at each point, nothing can stand unseen between two points.
    const roomM = wire.diameterM / 2 + clearanceM;
    const needM = Math.max(roomM, this.grid.stepM / 2) - 1e-9;
    const mouths = this.#mouthsOfOpen(wire, others, needM);
    const tracks = this.#marks.tracksFor(wire, others, powerToSignalM, mouths, avoid);
    const { bendRadiusM = 0 } = wire;
    // Where no way has room for its bends, a tight one is laid, and told.
    const tighter = [1, 0.5, 0].map((share) => share * bendRadiusM);
    const bendRadiiM = throughM === Infinity ? [...new Set(tighter)] : [0];
    return { wire, tracks, costs: this.rules, roomM, needM, bendRadiiM, throughM };
  }

  /** The route of a wire that may go through what is in its way, each metre of that at a cost; null where there is none. */
  layThrough(wire: RouteWire, others: readonly Laid[], throughM: number): Route | null {
    const points = this.#paths.find(this.#task(wire, others, throughM));
    return points && routeThrough(wire, points);
  }

  /** Wires laid in an order, on top of what lies; one that finds no way is left out. */
  layInOrder(
    wires: readonly RouteWire[],
    laid: readonly Laid[],
    crossingM?: number,
    avoid?: readonly Route[],
  ): readonly Laid[] {
    const all = [...laid];
    for (const wire of wires) {
      const route = this.lay(wire, all, crossingM, avoid);
      if (route) all.push({ wire, route });
    }
    return all;
  }

  /** Takes up each of some wires in turn and lays it again; keeps what is as good as before. */
  layAgain(wires: readonly RouteWire[], laid: readonly Laid[], crossingM?: number): readonly Laid[] {
    let all = laid;
    for (const wire of wires) {
      const others = all.filter((one) => one.wire !== wire);
      const old = all.find((one) => one.wire === wire);
      const route = this.lay(wire, others, crossingM);
      if (!route) continue;
      const one = { wire, route };
      if (!old || asGood(one, old, others)) all = [...others, one];
    }
    return all;
  }

  /** Lines straight out of the terminals of wires that do not lie yet: who passes there shuts them in, or is crossed. */
  #mouthsOfOpen(wire: RouteWire, laid: readonly Laid[], needM: number): Route[] {
    const open = this.#wires.filter((one) => one !== wire && !laid.some((other) => other.wire === one));
    return open.flatMap(({ id, layer, from, to }) =>
      [from, to].filter(isPoint).map((end): Route => {
        const lengthM = needM + 1.5 * this.grid.stepM;
        return { wire: id, points: [end, outFrom(end, end.faces, lengthM)], lengthM, layer, bends: 0 };
      }),
    );
  }
}
