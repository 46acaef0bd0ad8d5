import { routeLengthM, servedBy, type VehicleRoute } from './vehicle-route.ts';

/** A route with its id. */
export interface NamedRoute {
  readonly id: string;
  readonly route: VehicleRoute;
}

/** One route of a run, and whether wires go by it from its last end to its first. */
export interface RunWay extends NamedRoute {
  readonly isTurned: boolean;
}

/**
 * What lies at the first end of a route and at its last: of one that reaches a space all that it serves, and at the
 * space nothing that another route meets. Of another one the first and the last that it names; what else lies along a
 * route lies at no end of it.
 */
export function routeEnds(route: VehicleRoute): readonly [first: readonly string[], last: readonly string[]] {
  if (route.reaches) return [servedBy(route), []];
  const [first, ...others] = route.ends ?? [];
  const last = others.at(-1);
  return [first === undefined ? [] : [first], last === undefined ? [] : [last]];
}

/** Routes one after another, each turned so that it begins where the one before it ends; null where two do not meet. */
export function chained(routes: readonly NamedRoute[]): readonly RunWay[] | null {
  const [first, ...rest] = routes;
  if (!first) return null;
  if (rest.length === 0) return [{ ...first, isTurned: false }];
  for (const isTurned of [false, true]) {
    const ways: RunWay[] = [{ ...first, isTurned }];
    for (const next of rest) {
      const at = endOf(ways[ways.length - 1] ?? { ...first, isTurned });
      const [begins, ends] = routeEnds(next.route);
      if (meets(at, begins)) ways.push({ ...next, isTurned: false });
      else if (meets(at, ends)) ways.push({ ...next, isTurned: true });
      else break;
    }
    if (ways.length === routes.length) return ways;
  }
  return null;
}

const meets = (some: readonly string[], others: readonly string[]) =>
  some.some((name) => others.includes(name));

const endOf = ({ route, isTurned }: RunWay) => routeEnds(route)[isTurned ? 0 : 1];
const beginningOf = ({ route, isTurned }: RunWay) => routeEnds(route)[isTurned ? 1 : 0];

/** The id of several routes in turn; of one its own. */
export function waysId(ways: readonly NamedRoute[]): string {
  return ways.map(({ id }) => id).join(' + ');
}

/**
 * Several routes as one: their stretches in the order in which a wire goes by them. One that lies on two sides of the
 * vehicle is in its middle; what must know the side of a stretch asks its own route.
 */
export function joinedRoute(ways: readonly RunWay[]): VehicleRoute {
  const [first] = ways;
  const last = ways.at(-1);
  if (!first || !last) throw new Error('A run goes by one route at least.');
  if (ways.length === 1) return first.route;
  const isOneSide = ways.every(({ route }) => route.side === first.route.side);
  const reaches = first.route.reaches ?? last.route.reaches;
  return {
    title: ways.map(({ route }) => route.title).join(', then '),
    side: isOneSide ? first.route.side : 'middle',
    passes: ways.flatMap(passesInTurn),
    ends: [...new Set([...beginningOf(first), ...endOf(last)])],
    ...(reaches && { reaches }),
  };
}

function passesInTurn({ route: { passes }, isTurned }: RunWay): VehicleRoute['passes'] {
  return isTurned ? passes.toReversed() : passes;
}

/** A stretch as the vehicle tells it: its route, and which of its stretches it is. */
export interface Stretch {
  readonly way: RunWay;
  readonly at: number;
}

/** The stretches of several routes in the order of `joinedRoute`. */
export function stretchesOf(ways: readonly RunWay[]): readonly Stretch[] {
  return ways.flatMap((way) => {
    const all = way.route.passes.map((_, at) => ({ way, at }));
    return way.isTurned ? all.toReversed() : all;
  });
}

/** Places in which the routes of a run meet, with how far each lies along it (m). */
export function meetingPlaces(
  ways: readonly RunWay[],
): readonly { readonly place: string; readonly alongM: number }[] {
  let alongM = 0;
  return ways.slice(1).flatMap((way, before) => {
    const previous = ways[before];
    alongM += previous ? routeLengthM(previous.route) : 0;
    const here = previous ? endOf(previous).filter((name) => beginningOf(way).includes(name)) : [];
    const there = alongM;
    return here.map((place) => ({ place, alongM: there }));
  });
}

/** Where a device stands: on a board, in a place, or as one that is fitted by its id. */
export interface Standing {
  readonly board: string | null;
  readonly seat: string | null;
  readonly id: string;
}

/** True for a device that stands where the first of some routes begins: on a board that it reaches, or in a place there. */
export function isAtBeginning([first]: readonly RunWay[], { board, seat, id }: Standing): boolean {
  if (!first) return false;
  if (board !== null) return first.isTurned && first.route.reaches !== undefined;
  return beginningOf(first).includes(seat ?? id);
}

/** True for one that stands where the last of them ends. */
export function isAtEnd(ways: readonly RunWay[], { board, seat, id }: Standing): boolean {
  const last = ways.at(-1);
  if (!last) return false;
  if (board !== null) return !last.isTurned && last.route.reaches !== undefined;
  return endOf(last).includes(seat ?? id);
}
