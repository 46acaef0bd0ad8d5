import type { Draft } from '../draft/draft.ts';
import type { DraftDevice } from '../draft/draft-device.ts';
import { routesBetween, type Whereabouts } from '../draft/ways.ts';
import { pickRoute } from '../laying/runs.ts';
import { type FeedWay, wayAlong } from './feed-sizes.ts';

/** Where a feed to a device ends. */
export function whereFed({ board, seat, id }: DraftDevice): Whereabouts {
  return board === null ? { served: [seat ?? id] } : { board };
}

/** The way of a feed from a place by the route that it will take, on the side of what it comes from where it can. */
export function feedWay(
  draft: Draft,
  seat: string,
  target: DraftDevice,
  { side }: Pick<DraftDevice, 'side'>,
): FeedWay {
  const route = pickRoute(routesBetween(draft, { served: [seat] }, whereFed(target)), 'power', side);
  return route
    ? wayAlong(draft.around, route.route)
    : { lengthM: 1, zones: [{ zone: target.zone, lengthM: 1 }] };
}
