import { bodyId } from '../../model/content/resolved-job.ts';
import { servedBy } from '../../model/content/vehicle-route.ts';
import type { Draft } from '../draft/draft.ts';
import type { DraftDevice } from '../draft/draft-device.ts';
import { directRoutes, whereIs } from '../draft/ways.ts';
import { batteriesOf } from './battery-places.ts';
import { postsOf } from './main-fuse.ts';

/** Where a ground lead goes, as a link names it, and why there. */
export interface GroundEnd {
  readonly to: string;
  readonly reason: string;
}

/**
 * Where the ground lead of a device goes: to the point that it or its board names, else to the only one in its zone and
 * on its side that may be used; of several to the one that a route leads to from it. In a vehicle without ground points
 * back to the battery. Asks where two would do.
 */
export function groundEnd(draft: Draft, device: DraftDevice): GroundEnd | null {
  const { vehicle } = draft.around;
  const board = draft.boards[device.board ?? ''];
  const named = device.given?.ground ?? board?.ground;
  const path =
    device.given?.ground === undefined && board ? ['boards', device.board ?? ''] : ['devices', device.id];
  // A name that is none of a ground point is told by the reader.
  if (named !== undefined)
    return named in vehicle.grounds ? { to: `${bodyId}.${named}`, reason: `ground: ${named}` } : null;
  if (Object.keys(vehicle.grounds).length === 0) return backToBattery(draft, device);
  const points = usablePoints(draft, device);
  const where = whereIs(draft, { device: device.id, terminal: '' });
  const led = where
    ? points.filter((point) => directRoutes(draft, where, { served: [`${bodyId}.${point}`] }).length > 0)
    : [];
  const shared = points.filter((point) => Object.values(draft.boards).some(({ ground }) => ground === point));
  const besides = points.filter((point) => isServedWith(draft, device, point));
  for (const some of [points, led, shared, besides]) {
    const [only, second] = some;
    if (only !== undefined && second === undefined)
      return {
        to: `${bodyId}.${only}`,
        reason:
          some === points
            ? `the only ground point in its zone and on its side: ${only}`
            : `a route leads to ${only}`,
      };
  }
  const subject = board ? (device.board ?? device.id) : device.id;
  draft.ask(
    path,
    points.length === 0
      ? `${vehicle.id} has no ground point that may be used in the ${device.zone} zone on the side of ${subject}`
      : `${subject} could go to ground at ${points.join(' or ')}`,
    points.length === 0
      ? 'write ground: with one that a short lead reaches, or measure one into the vehicle'
      : 'write ground: with one of them',
  );
  return null;
}

/** Ground points in the zone and on the side of a device that hold nothing else. */
function usablePoints(draft: Draft, { zone, side }: DraftDevice): readonly string[] {
  return Object.entries(draft.around.vehicle.grounds).flatMap(([id, point]) => {
    const onSide = point.side === side || point.side === 'middle' || side === 'middle';
    return point.zone === zone && onSide && point.holds === 'nothing-else' ? [id] : [];
  });
}

/** True for a ground point that lies beside the place of a device: one route serves both at its far end. */
function isServedWith(draft: Draft, { seat }: DraftDevice, point: string): boolean {
  return (
    seat !== null &&
    Object.values(draft.around.vehicle.routes).some((route) =>
      [seat, `${bodyId}.${point}`].every((name) => servedBy(route).includes(name)),
    )
  );
}

function backToBattery(draft: Draft, device: DraftDevice): GroundEnd | null {
  const { starter } = batteriesOf(draft);
  const minus = starter && postsOf(starter).minus;
  if (!starter || !minus || device.spec.kind === 'battery') return null;
  return {
    to: `${starter.id}.${minus}`,
    reason:
      'the vehicle has no ground point: back to the battery, beside the feed (33 CFR 183, quoted from memory)',
  };
}
