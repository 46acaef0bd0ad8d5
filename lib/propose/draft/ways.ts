import { bodyId, type LinkEnd, linkEndOf } from '../../model/content/resolved-job.ts';
import { routeLengthM, servedBy, type VehicleRoute } from '../../model/content/vehicle-route.ts';
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

/** A route with its id. */
export interface NamedRoute {
  readonly id: string;
  readonly route: VehicleRoute;
}

/** The routes between two places, the shortest first: from a board those that reach its space. */
export function routesBetween(draft: Draft, one: Whereabouts, other: Whereabouts): readonly NamedRoute[] {
  const all = Object.entries(draft.around.vehicle.routes).map(([id, route]) => ({ id, route }));
  const serves = ({ route }: NamedRoute, end: Whereabouts): boolean =>
    'board' in end
      ? route.reaches?.space === draft.spaceOf(end.board)
      : end.served.some((name) => servedBy(route).includes(name));
  const isBetween = (named: NamedRoute): boolean => {
    // What a route that reaches a space serves lies at its far end, all of it.
    if (!('board' in one) && !('board' in other) && named.route.reaches) return false;
    return serves(named, one) && serves(named, other);
  };
  return all.filter(isBetween).toSorted((a, b) => routeLengthM(a.route) - routeLengthM(b.route));
}

/** True where both ends lie in one place, so that a link between them takes no route. */
export function isOnePlace(one: Whereabouts, other: Whereabouts): boolean {
  if ('board' in one || 'board' in other)
    return 'board' in one && 'board' in other && one.board === other.board;
  return one.served.some((name) => other.served.includes(name));
}
