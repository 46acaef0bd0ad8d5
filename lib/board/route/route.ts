import { opposite, outward, type Side, type WireLayer } from '../layout/item.ts';
import { distance, type Point } from '../shape/point.ts';

/** One end of a wire to lay: a terminal and the way it faces, or the side of the board that it leaves by. */
export type RouteEnd = (Point & { readonly faces: Side }) | { readonly exit: Side };

/** True where a wire ends in a terminal, and not over the edge of the board. */
export function isPoint(end: RouteEnd): end is Exclude<RouteEnd, { readonly exit: unknown }> {
  return !('exit' in end);
}

/** A wire to lay. */
export interface RouteWire {
  readonly id: string;
  readonly from: RouteEnd;
  readonly to: RouteEnd;
  readonly layer: WireLayer;
  /** Over its insulation or covering. */
  readonly diameterM: number;
  /** Least radius that it may be bent to, on its middle line, metres. Left out: 0. */
  readonly bendRadiusM?: number;
  /** A bend below this radius kinks it. */
  readonly kinkRadiusM?: number;
  /** The run that it leaves the board in: wires of one run leave beside each other where they may. */
  readonly run?: string;
  /** The other wire of its pair, such as minus beside plus: they run together where they may. */
  readonly mate?: string;
  /** How long its way may be where it is made to a length, metres. Left out: as long as it comes. */
  readonly longestM?: number;
}

/** A wire as it is laid: from its first end to its second, straight along x or y between points. */
export interface Route {
  readonly wire: string;
  readonly points: readonly Point[];
  readonly lengthM: number;
  readonly layer: WireLayer;
  readonly bends: number;
}

/** Two wires that cross, the first id before the second, and where. */
export interface Crossing extends Point {
  readonly wires: readonly [string, string];
}

/** A route through points: those in line are left out, length and bends counted. */
export function routeThrough(wire: RouteWire, points: readonly Point[]): Route {
  const kept: Point[] = [];
  for (const p of points) {
    const last = kept.at(-1);
    if (last && distance(last, p) < 1e-9) continue;
    const before = kept.at(-2);
    if (last && before && inLine(before, last, p)) kept.pop();
    kept.push({ xM: p.xM, yM: p.yM });
  }
  const lengthM = kept.reduce((sum, p, at) => sum + distance(kept[at - 1] ?? p, p), 0);
  return { wire: wire.id, points: kept, lengthM, layer: wire.layer, bends: Math.max(0, kept.length - 2) };
}

function inLine(a: Point, b: Point, c: Point): boolean {
  const level = Math.abs(a.yM - b.yM) < 1e-9 && Math.abs(b.yM - c.yM) < 1e-9;
  const upright = Math.abs(a.xM - b.xM) < 1e-9 && Math.abs(b.xM - c.xM) < 1e-9;
  return level || upright;
}

/** One straight stretch of a route. */
export interface Stretch {
  readonly level: boolean;
  /** y of a level stretch, x of an upright one. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** Stretches of routes that were asked for before: a route never changes. */
const known = new WeakMap<Route, readonly Stretch[]>();

/** The straight stretches of a route. */
export function stretches(route: Route): readonly Stretch[] {
  const before = known.get(route);
  if (before) return before;
  const own = route.points.slice(1).flatMap((b, index): Stretch[] => {
    const a = route.points[index];
    if (!a) return [];
    const level = Math.abs(a.yM - b.yM) < 1e-9;
    const [one, other] = level ? [a.xM, b.xM] : [a.yM, b.yM];
    return [{ level, at: level ? a.yM : a.xM, from: Math.min(one, other), to: Math.max(one, other) }];
  });
  known.set(route, own);
  return own;
}

/** Where two routes cross; ends that touch do not count. */
function crossingsOf(a: Route, b: Route): Crossing[] {
  const found: Crossing[] = [];
  const wires = a.wire < b.wire ? ([a.wire, b.wire] as const) : ([b.wire, a.wire] as const);
  for (const one of stretches(a))
    for (const other of stretches(b)) {
      if (one.level === other.level || !inner(one, other.at) || !inner(other, one.at)) continue;
      const [xM, yM] = one.level ? [other.at, one.at] : [one.at, other.at];
      found.push({ wires, xM, yM });
    }
  return found;
}

function inner({ from, to }: Stretch, value: number): boolean {
  return value > from + 1e-9 && value < to - 1e-9;
}

/** Every crossing of laid wires; all are at right angles. */
export function crossings(routes: readonly Route[]): Crossing[] {
  return routes.flatMap((a, at) => routes.slice(at + 1).flatMap((b) => crossingsOf(a, b)));
}

/** How often laid wires cross. */
export function countCrossings(routes: readonly Route[]): number {
  let count = 0;
  for (const [at, a] of routes.entries())
    for (let other = at + 1; other < routes.length; other += 1) {
      const b = routes[other];
      if (b) count += crossingsBetween(a, b);
    }
  return count;
}

/** How often one route crosses others. */
export function crossingCount(route: Route, others: readonly Route[]): number {
  let count = 0;
  for (const other of others) count += crossingsBetween(route, other);
  return count;
}

/** How often two routes cross, without the places. */
function crossingsBetween(a: Route, b: Route): number {
  let count = 0;
  const others = stretches(b);
  for (const one of stretches(a))
    for (const other of others)
      if (one.level !== other.level && inner(one, other.at) && inner(other, one.at)) count += 1;
  return count;
}

/** The way a wire goes into a terminal that faces a side. */
export function into(faces: Side): Side {
  return opposite[faces];
}

/** A point some way out from another. */
export function outFrom(p: Point, side: Side, byM: number): Point {
  return { xM: p.xM + outward[side].xM * byM, yM: p.yM + outward[side].yM * byM };
}
