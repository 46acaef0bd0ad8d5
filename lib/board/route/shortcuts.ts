import type { Point } from '../shape/point.ts';
import { tightestBend } from './bends.ts';
import type { ClearWays } from './clear-way.ts';
import { crossingCount, type Route, type RouteWire, routeThrough } from './route.ts';
import type { Laid } from './tracks.ts';

/**
 * Makes wires straighter, one by one: two legs are joined at once, without those between, where the wire keeps its room
 * there, crosses no more wires than before and is bent no more tightly. Until nothing gets simpler any more.
 */
export function straightened(laid: readonly Laid[], ways: ClearWays): readonly Laid[] {
  let all = laid;
  for (let pass = 0, simpler = true; simpler && pass < mostPasses; pass += 1) {
    simpler = false;
    for (const { wire } of laid) {
      const own = all.find((one) => one.wire === wire);
      if (!own) continue;
      const others = all.filter((one) => one !== own);
      const better = simplest(own, others, ways);
      if (!better) continue;
      all = all.map((one) => (one === own ? better : one));
      simpler = true;
    }
  }
  return all;
}

const mostPasses = 12;

/** The best that a wire comes to by one shortcut; null where none is better than how it lies. */
function simplest(own: Laid, others: readonly Laid[], ways: ClearWays): Laid | null {
  const routes = others.map(({ route }) => route);
  const isTight = (route: Route) => tightestBend(route, own.wire.bendRadiusM ?? 0) !== null;
  let best: { readonly route: Route; readonly crossings: number } | null = null;
  const now = { route: own.route, crossings: crossingCount(own.route, routes) };
  for (const route of shortcuts(own.wire, own.route)) {
    const crossings = crossingCount(route, routes);
    if (!isBetter({ route, crossings }, best ?? now)) continue;
    if (isTight(route) && !isTight(own.route)) continue;
    if (ways.isClear(own.wire, route, others)) best = { route, crossings };
  }
  return best && { wire: own.wire, route: best.route };
}

interface Judged {
  readonly route: Route;
  readonly crossings: number;
}

/** Fewer crossings, then fewer bends, then shorter; never longer by more than bends and crossings are worth. */
function isBetter(one: Judged, than: Judged): boolean {
  if (one.crossings !== than.crossings) return one.crossings < than.crossings;
  if (one.route.bends !== than.route.bends) return one.route.bends < than.route.bends;
  return one.route.lengthM < than.route.lengthM - 1e-4;
}

/** A wire with two of its legs joined at once: where they meet, or the one put in line with the other. */
function shortcuts(wire: RouteWire, { points }: Route): Route[] {
  const count = points.length - 1;
  const found: Route[] = [];
  for (let i = 0; i < count; i += 1)
    for (let j = i + 2; j < count; j += 1)
      for (const through of joined(points, i, j))
        if (keepsEnds(points, through)) found.push(routeThrough(wire, through));
  return found;
}

/** The points of a wire whose legs i and j are joined at once. */
function joined(points: readonly Point[], i: number, j: number): Point[][] {
  const [a, b, c, d] = [points[i], points[i + 1], points[j], points[j + 1]];
  if (!a || !b || !c || !d) return [];
  const level = Math.abs(a.yM - b.yM) < 1e-9;
  const [before, after] = [points.slice(0, i), points.slice(j + 1)];
  if (level !== Math.abs(c.yM - d.yM) < 1e-9)
    return [[...before, a, level ? { xM: c.xM, yM: a.yM } : { xM: a.xM, yM: c.yM }, ...after]];
  const beyond = level ? { xM: d.xM, yM: a.yM } : { xM: a.xM, yM: d.yM };
  const back = level ? { xM: a.xM, yM: c.yM } : { xM: c.xM, yM: a.yM };
  return [
    ...(after.length > 1 ? [[...before, a, beyond, ...after.slice(1)]] : []),
    ...(i > 0 ? [[...before, back, ...after]] : []),
  ];
}

/** True where a wire goes out of its first end and into its last as it did. */
function keepsEnds(old: readonly Point[], now: readonly Point[]): boolean {
  return sameWay(old[0], old[1], now[1]) && sameWay(old.at(-1), old.at(-2), now.at(-2));
}

function sameWay(end: Point | undefined, old: Point | undefined, now: Point | undefined): boolean {
  if (!end || !old || !now) return false;
  const [x, y, u, v] = [old.xM - end.xM, old.yM - end.yM, now.xM - end.xM, now.yM - end.yM];
  return x * u + y * v > 1e-9 && Math.abs(x * v - y * u) < 1e-9;
}
