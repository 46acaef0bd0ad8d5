import {
  type Device,
  type Link,
  linkEndOf,
  type Run,
  sharedTerminal,
} from '../../model/content/resolved-job.ts';
import { isAtBeginning, meetingPlaces } from '../../model/content/run-ways.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import { listed } from '../../model/printed/listed.ts';
import { isQuantity } from '../../model/quantity/quantity.ts';
import type { Report } from '../report.ts';

interface Placing {
  readonly links: readonly Link[];
  readonly runs: readonly Run[];
  readonly devices: readonly Device[];
  readonly report: Report;
}

/** Links with the distance of each joint that lies on the way of another link, from the terminal that both share. */
export function placeJoints(placing: Placing): readonly Link[] {
  return placing.links.map((link) => {
    const { given } = link;
    if (!given?.joint || (given.joint.at === undefined && given.joint.after === undefined)) return link;
    const after = jointAfterM(placing, link, given.joint);
    return after === null ? link : { ...link, given: { ...given, joint: { ...given.joint, after } } };
  });
}

function jointAfterM(
  { links, runs, devices, ...placing }: Placing,
  link: Link,
  joint: NonNullable<NonNullable<Link['given']>['joint']>,
) {
  const trunk = links.find(
    (other) => other !== link && linkName(other.id) === joint.with && sharedTerminal(link, other) !== null,
  );
  // That they share no terminal is told with the other joints.
  if (!trunk) return null;
  // A pair is told once.
  const report = link.id.endsWith('.-') ? null : placing.report;
  const run = runs.find(({ id }) => id === trunk.run);
  const path = ['links', linkName(link.id), 'joint'];
  if (!run) {
    report?.at(
      path,
      `${joint.with} goes by no run, so ${linkName(link.id)} is joined to it on no way`,
      'name it in a run, or take at: and after: out, and they are joined before the port',
    );
    return null;
  }
  if (joint.at === undefined) {
    const runM = routeLengthM(run.route);
    if (joint.after !== undefined && joint.after <= runM) return joint.after;
    report?.at(
      [...path, 'after'],
      `${linkName(link.id)} is to be joined to ${joint.with} further along than its run ${run.id} is long`,
      `measure the distance from the shared terminal along the run: ${Math.floor(runM * 1000)} mm or less`,
    );
    return null;
  }
  const places = meetingPlaces(run.ways);
  const found = places.find(({ place }) => place === joint.at);
  if (!found) {
    const known = listed(
      places.map(({ place }) => place),
      'or',
    );
    report?.at(
      [...path, 'at'],
      `${joint.at} is no place in which routes of ${run.id} meet, the run of ${joint.with}`,
      known === ''
        ? 'write after: with the distance from the terminal that they share along that run'
        : `write at: ${known}, or after: with the distance from the terminal that they share along that run`,
    );
    return null;
  }
  const shared = linkEndOf(sharedTerminal(link, trunk) ?? '');
  const device = devices.find(({ id }) => id === shared.device);
  const begins = device !== undefined && isAtBeginning(run.ways, device);
  const afterM = begins ? found.alongM : routeLengthM(run.route) - found.alongM;
  return isQuantity<'m'>(afterM) ? afterM : null;
}
