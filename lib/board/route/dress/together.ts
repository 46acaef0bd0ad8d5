import { isPoint, type Route, type RouteWire, type Stretch, stretches } from '../route.ts';
import type { Laid } from '../tracks.ts';

/** What is no further apart than this lies together, as looms are drawn (m). */
export const togetherM = 0.03;

/** Where a wire leaves its board: by which side, and where along it (m); null where it ends in terminals. */
export interface Leaving {
  readonly side: string;
  readonly alongM: number;
}

export function leavingOf({ wire, route }: Laid): Leaving | null {
  const [end, p] = isPoint(wire.to) ? [wire.from, route.points[0]] : [wire.to, route.points.at(-1)];
  if (isPoint(end) || !p) return null;
  return { side: end.exit, alongM: end.exit === 'left' || end.exit === 'right' ? p.yM : p.xM };
}

/** In how many bundles the wires of each run leave by each side. */
export function bundlesLeft(laid: readonly Laid[]): number[] {
  const groups = new Map<string, number[]>();
  for (const one of laid) {
    const leaving = one.wire.run === undefined ? null : leavingOf(one);
    if (!leaving) continue;
    const key = `${one.wire.run} ${leaving.side}`;
    groups.set(key, [...(groups.get(key) ?? []), leaving.alongM]);
  }
  return [...groups.values()].map((places) => {
    places.sort((a, b) => a - b);
    return 1 + places.filter((place, at) => at > 0 && place - (places[at - 1] ?? 0) > togetherM).length;
  });
}

/** In how many bundles the wires of each run leave by each side, but the first: what they are too many. */
export function bundlesTooMany(laid: readonly Laid[]): number {
  return bundlesLeft(laid).reduce((sum, count) => sum + count - 1, 0);
}

/** How far the two wires of pairs run apart from each other (m). */
export function strayedM(laid: readonly Laid[]): number {
  let sum = 0;
  for (const { wire, route } of laid) {
    const mate = mateOf(wire, laid);
    if (mate) sum += route.lengthM - besideM(route, mate.route);
  }
  return sum;
}

/** How far a route runs beside another (m). */
function besideM(route: Route, other: Route): number {
  let sum = 0;
  for (const one of stretches(route)) {
    const spans = stretches(other)
      .filter((two) => isBeside(one, two))
      .map((two) => [Math.max(one.from, two.from), Math.min(one.to, two.to)] as const)
      .filter(([from, to]) => to > from)
      .toSorted((a, b) => a[0] - b[0]);
    let doneM = -Infinity;
    for (const [from, to] of spans) {
      sum += Math.max(0, to - Math.max(from, doneM));
      doneM = Math.max(doneM, to);
    }
  }
  return sum;
}

function isBeside(one: Stretch, two: Stretch): boolean {
  return one.level === two.level && Math.abs(one.at - two.at) <= togetherM;
}

/** The wire that one is a pair with, where it lies already. */
export function mateOf({ mate }: RouteWire, others: readonly Laid[]): Laid | undefined {
  return mate === undefined ? undefined : others.find(({ wire }) => wire.id === mate);
}
