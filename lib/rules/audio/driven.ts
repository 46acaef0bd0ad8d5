import { type Device, type Job, terminalId } from '../../model/content/resolved-job.ts';
import { type LiveEdge, reached } from '../live-side.ts';
import { deviceIdOf, deviceOf, hasRole } from '../look-up.ts';

/** Terminals of a role among the devices of the job and its vehicle. */
export function terminalsWith(job: Job, role: string, origin?: Device['origin']): readonly string[] {
  return job.devices
    .filter((device) => origin === undefined || device.origin === origin)
    .flatMap(({ id, facts }) =>
      Object.keys(facts.terminals)
        .filter((terminal) => facts.terminals[terminal]?.role === role)
        .map((terminal) => terminalId({ device: id, terminal })),
    );
}

export const isContact = (job: Job, kind: LiveEdge['kind'], end: string): boolean =>
  kind === 'bar' && hasRole(job, end, 'relay-contact');

/**
 * True where something turns terminals on: an output, a supply, a feed of the vehicle, or the contact of a relay that is
 * fed itself and whose coil is driven. A relay that waits for itself never pulls in.
 */
export function isDriven(
  job: Job,
  edges: readonly LiveEdge[],
  terminals: readonly string[],
  relays: readonly string[] = [],
): boolean {
  const net = [...reached(edges, terminals, ({ kind, ends: [end] }) => !isContact(job, kind, end))];
  if (net.some((end) => hasRole(job, end, 'turn-on-out', 'source-positive') || isVehicleFeed(job, end)))
    return true;
  return net.some((end) => {
    const relay = deviceIdOf(end);
    if (!hasRole(job, end, 'relay-contact') || relays.includes(relay)) return false;
    const own = (role: string) => terminalsWith(job, role).filter((one) => deviceIdOf(one) === relay);
    const others = own('relay-contact').filter((one) => !net.includes(one));
    const through = [...relays, relay];
    return isDriven(job, edges, others, through) && isDriven(job, edges, own('relay-coil'), through);
  });
}

/** What the vehicle feeds is switched by its maker. */
const isVehicleFeed = (job: Job, end: string): boolean =>
  hasRole(job, end, 'feed-out') && deviceOf(job, deviceIdOf(end))?.origin === 'vehicle';

/**
 * What terminals hang on through wires, bars and fuses of the job, up to where they leave the vehicle's own parts: what
 * a fuse block of the vehicle feeds is switched as its maker made it. Contacts are not passed.
 */
export function netOf(job: Job, edges: readonly LiveEdge[], terminals: readonly string[]): readonly string[] {
  const passes = ({ kind, ends: [end] }: LiveEdge): boolean =>
    kind === 'wire' || (!isContact(job, kind, end) && deviceOf(job, deviceIdOf(end))?.origin === 'job');
  return [...reached(edges, terminals, passes)];
}
