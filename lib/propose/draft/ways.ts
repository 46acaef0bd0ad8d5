import { bodyId, type LinkEnd, linkEndOf } from '../../model/content/resolved-job.ts';
import {
  chained,
  joinedRoute,
  type NamedRoute,
  type RunWay,
  routeEnds,
  waysId,
} from '../../model/content/run-ways.ts';
import { routeLengthM, servedBy } from '../../model/content/vehicle-route.ts';
import type { Draft } from './draft.ts';
import { standsNowhere } from './draft-device.ts';

/** Where an end of a link lies: on a board, or somewhere that routes serve. */
export type Whereabouts = { readonly board: string } | { readonly served: readonly string[] };

/** Where an end of a link lies; null where nothing is known of its device, or not where it stands. */
export function whereIs(draft: Draft, { device: id, terminal }: LinkEnd): Whereabouts | null {
  if (id === bodyId) return { served: [`${bodyId}.${terminal}`] };
  const device = draft.device(id);
  if (!device) return null;
  if (device.board !== null) return { board: device.board };
  if (device.seat !== null) return { served: [device.seat] };
  return standsNowhere(device) ? null : { served: [id] };
}

/** Where the two ends of a link lie. */
export function endsOf(draft: Draft, link: { readonly from: string; readonly to: string }) {
  return [whereIs(draft, linkEndOf(link.from)), whereIs(draft, linkEndOf(link.to))] as const;
}

/** A way between two places: one route, or several that meet, as one. */
export interface Way extends NamedRoute {
  /** The routes that it goes by, one after another. */
  readonly ways: readonly RunWay[];
}

/**
 * The ways between two places, the shortest first: from a board the routes that reach its space. Where no one route
 * leads there, the shortest chain of routes that meet.
 */
export function routesBetween(draft: Draft, one: Whereabouts, other: Whereabouts): readonly Way[] {
  const direct = directRoutes(draft, one, other);
  if (direct.length > 0) return direct;
  const chain = chainBetween(draft, one, other);
  return chain ? [chain] : [];
}

/** The single routes between two places, the shortest first. */
export function directRoutes(draft: Draft, one: Whereabouts, other: Whereabouts): readonly Way[] {
  const serves = ({ route }: NamedRoute, end: Whereabouts): boolean =>
    'board' in end
      ? route.reaches?.space === draft.spaceOf(end.board)
      : end.served.some((name) => servedBy(route).includes(name));
  const isBetween = (named: NamedRoute): boolean => {
    // What a route that reaches a space serves lies at its far end, all of it.
    if (!('board' in one) && !('board' in other) && named.route.reaches) return false;
    return serves(named, one) && serves(named, other);
  };
  return allRoutes(draft)
    .filter(isBetween)
    .toSorted((a, b) => routeLengthM(a.route) - routeLengthM(b.route))
    .map((named) => wayBy([{ ...named, isTurned: false }]));
}

function wayBy(ways: readonly RunWay[]): Way {
  return { id: waysId(ways), route: joinedRoute(ways), ways };
}

function allRoutes(draft: Draft): readonly NamedRoute[] {
  return Object.entries(draft.around.vehicle.routes).map(([id, route]) => ({ id, route }));
}

/** A place that routes lead to, by the shortest chain of them from where the search began. */
interface Reached {
  readonly lengthM: number;
  readonly ways: readonly NamedRoute[];
}

/**
 * The shortest chain of routes that meet in places at their ends (Dijkstra, 1959); of equals that of fewest routes. From
 * one board to another none leads: a wire would leave over the rim of a space that it never stands in.
 */
function chainBetween(draft: Draft, one: Whereabouts, other: Whereabouts): Way | null {
  if ('board' in one && 'board' in other) return null;
  const [from, to] = inOneOrder(one, other);
  if (!('served' in from)) return null;
  const reached = reachedFrom(draft, from.served);
  const goal =
    'served' in to
      ? to.served.flatMap((name) => reached.get(name) ?? [])
      : allRoutes(draft)
          .filter(({ route }) => route.reaches?.space === draft.spaceOf(to.board))
          .flatMap((last) =>
            routeEnds(last.route)[0].flatMap((name) => {
              const before = reached.get(name);
              return before ? [onward(before, last)] : [];
            }),
          );
  const [best] = goal.toSorted(shorter);
  const ways = best && chained(best.ways);
  return ways ? wayBy(ways) : null;
}

/** Where a chain begins and where it leads, the same for a link that is written the other way round: a board last. */
function inOneOrder(one: Whereabouts, other: Whereabouts): readonly [Whereabouts, Whereabouts] {
  if ('board' in one) return [other, one];
  if ('board' in other) return [one, other];
  return one.served.join(' ') <= other.served.join(' ') ? [one, other] : [other, one];
}

/** Every place that chains of routes lead to from some places, without those that reach a space. */
export function reachedFrom(draft: Draft, places: readonly string[]): ReadonlyMap<string, Reached> {
  const between = allRoutes(draft).filter(({ route }) => !route.reaches);
  const reached = new Map<string, Reached>();
  let open = places.map((name) => ({ name, at: { lengthM: 0, ways: [] } as Reached }));
  while (open.length > 0) {
    const [next, ...rest] = open.toSorted((a, b) => shorter(a.at, b.at));
    open = rest;
    if (!next || reached.has(next.name)) continue;
    reached.set(next.name, next.at);
    for (const named of between) {
      const [first, last] = routeEnds(named.route);
      const onwards = first.includes(next.name) ? last : last.includes(next.name) ? first : [];
      for (const name of onwards) open.push({ name, at: onward(next.at, named) });
    }
  }
  return reached;
}

function onward({ lengthM, ways }: Reached, named: NamedRoute): Reached {
  return { lengthM: lengthM + routeLengthM(named.route), ways: [...ways, named] };
}

function shorter(a: Reached, b: Reached): number {
  return a.lengthM - b.lengthM || a.ways.length - b.ways.length || (waysId(a.ways) < waysId(b.ways) ? -1 : 1);
}

/** True where both ends lie in one place, so that a link between them takes no route. */
export function isOnePlace(one: Whereabouts, other: Whereabouts): boolean {
  if ('board' in one || 'board' in other)
    return 'board' in one && 'board' in other && one.board === other.board;
  return one.served.some((name) => other.served.includes(name));
}
