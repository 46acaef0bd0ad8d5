import {
  type Device,
  type Job,
  type Link,
  type LinkEnd,
  type Run,
  sharedTerminal,
  terminalId,
} from '../../../model/content/resolved-job.ts';
import { hingeCount, hingesBetween } from '../../../model/content/run-hinges.ts';
import { isAtBeginning, isAtEnd } from '../../../model/content/run-ways.ts';
import type { PlanWire } from '../../../model/plan/index.ts';
import type { ZoneKind } from '../../../model/vocabulary.ts';
import { trunkOf } from '../branches.ts';
import type { DevicesById } from '../conductor-role.ts';
import { joinedTo, liesOnWay } from '../joints.ts';

type Passes = PlanWire['zones'];
type OfJob = Pick<Job, 'links' | 'runs' | 'vehicle'>;

/** What of its run the conductor of a link goes along. */
export interface OwnWay {
  /** From the end of the run where it begins, or from where it is joined to another link. */
  readonly passes: Passes;
  /** How many hinges of doors it passes, those before and behind its run among them. */
  readonly hinges: number;
}

/**
 * The way of a link by its run. One that is joined to another of the same run on its way goes along what lies behind the
 * joint alone. A branch goes along what it shares with the link that it leaves, from the terminal of both on, then by its
 * leg in the zone of its far end. Where nothing tells at which end of the run that terminal is, the zones are those of the
 * whole run, and the hinges the more of both ways.
 */
export function ownWay(job: OfJob, devices: DevicesById, link: Link): OwnWay {
  const run = job.runs.find(({ id }) => id === link.run);
  if (!run) return { passes: [], hinges: 0 };
  const branch = branchOf(job, link);
  if (branch) return branchWay(devices, link, run, branch);
  const joined = joinedTo(job, link);
  if (joined !== null && joined.alongM !== null && joined.trunk.run === run.id)
    return wayFromJoint(job, devices, link, run, { ...joined, alongM: joined.alongM });
  const passes = passesOf(run);
  const own = [link.from, link.to].filter((end) => !liesOnWay(job, link, end));
  const [one, other] = own.map(({ device }) => endZone(devices.get(device), link));
  const joint =
    joined?.at === undefined || joined.at === null ? undefined : job.vehicle.places[joined.at]?.zone;
  return { passes, hinges: hingesBetween(zonesOf(passes), one, other ?? joint) };
}

/** How many hinges lie on a run before a point on it, so far from an end of a link (m), the end's own among them. */
export function hingesBefore(
  job: OfJob,
  devices: DevicesById,
  {
    link,
    run,
    end,
    place = null,
  }: { readonly link: Link; readonly run: Run; readonly end: LinkEnd; readonly place?: string | null },
  alongM: number,
): number {
  const device = devices.get(end.device);
  const zone = endZone(device, link);
  const there = place === null ? undefined : job.vehicle.places[place]?.zone;
  const before = (turned: boolean): number =>
    hingeCount([zone, ...zonesOf(partedAt(run, turned, alongM)[0]), there]);
  const turned = isTurned(run, device, zone);
  return turned === null ? Math.max(before(false), before(true)) : before(turned);
}

interface Parting {
  readonly shared: LinkEnd;
  readonly far: LinkEnd;
  readonly after: number;
  readonly leg: number;
}

function branchOf(job: Pick<Job, 'links'>, link: Link): Parting | null {
  const branch = link.given?.branch;
  const trunk = branch && trunkOf(job, link, branch.from);
  const terminal = trunk && sharedTerminal(link, trunk);
  if (!branch || !terminal) return null;
  const [shared, far] = terminalId(link.from) === terminal ? [link.from, link.to] : [link.to, link.from];
  return { shared, far, after: branch.after, leg: branch.leg };
}

function branchWay(devices: DevicesById, link: Link, run: Run, { shared, far, after, leg }: Parting): OwnWay {
  const device = devices.get(shared.device);
  const [zone, farZone] = [endZone(device, link), endZone(devices.get(far.device), link)];
  const way = (turned: boolean): OwnWay => {
    const passes = [...partedAt(run, turned, after)[0], { zone: farZone, lengthM: leg, edge: false }];
    return { passes, hinges: hingeCount([zone, ...zonesOf(passes)]) };
  };
  const turned = isTurned(run, device, zone);
  if (turned !== null) return way(turned);
  return { passes: passesOf(run), hinges: Math.max(way(false).hinges, way(true).hinges) };
}

function wayFromJoint(
  job: OfJob,
  devices: DevicesById,
  link: Link,
  run: Run,
  {
    trunk,
    terminal,
    at,
    alongM,
  }: { readonly trunk: Link; readonly terminal: string; readonly at: string | null; readonly alongM: number },
): OwnWay {
  const ends = [trunk.from, trunk.to];
  const shared = devices.get(ends.find((end) => terminalId(end) === terminal)?.device ?? '');
  const far = [link.from, link.to].find((end) => terminalId(end) !== terminal);
  const farZone = endZone(devices.get(far?.device ?? ''), link);
  const way = (turned: boolean): OwnWay => {
    const [before, passes] = partedAt(run, turned, alongM);
    const joint = (at === null ? undefined : job.vehicle.places[at]?.zone) ?? before.at(-1)?.zone;
    return { passes, hinges: hingeCount([joint, ...zonesOf(passes), farZone]) };
  };
  const turned = isTurned(run, shared, endZone(shared, trunk));
  if (turned !== null) return way(turned);
  return { passes: passesOf(run), hinges: Math.max(way(false).hinges, way(true).hinges) };
}

const zonesOf = (passes: Passes): readonly ZoneKind[] => passes.map(({ zone }) => zone);

function passesOf(run: Run): Passes {
  return run.route.passes.map(({ zone, length, edge }) => ({ zone, lengthM: length, edge }));
}

/** True for a device at the last end of a run, by its zone or by its place; null where neither tells. */
function isTurned(run: Run, device: Device | undefined, zone: ZoneKind): boolean | null {
  const passes = run.route.passes;
  const [first, last] = [passes[0]?.zone === zone, passes.at(-1)?.zone === zone];
  if (first !== last) return last;
  if (!device) return null;
  const [begins, ends] = [isAtBeginning(run.ways, device), isAtEnd(run.ways, device)];
  return begins === ends ? null : ends;
}

/** Lengths that differ by less are one. */
const sameM = 1e-9;

/** The stretches of a run from one of its ends, up to a point so far along it (m) and from there on. */
function partedAt(run: Run, turned: boolean, alongM: number): readonly [before: Passes, behind: Passes] {
  const [before, behind]: [PlanWire['zones'][number][], PlanWire['zones'][number][]] = [[], []];
  let fromM = 0;
  for (const pass of turned ? passesOf(run).toReversed() : passesOf(run)) {
    const isCut = alongM > fromM + sameM && alongM < fromM + pass.lengthM - sameM;
    const ownM = alongM - fromM;
    // An edge lies where the stretch begins by the vehicle's file.
    if (isCut) {
      before.push({ ...pass, lengthM: ownM, edge: pass.edge && !turned });
      behind.push({ ...pass, lengthM: pass.lengthM - ownM, edge: pass.edge && turned });
    } else (fromM >= alongM - sameM ? behind : before).push(pass);
    fromM += pass.lengthM;
  }
  return [before, behind];
}

/** The zone of an end of a link: the body has ground points in several, everything else stands in one. */
export function endZone(device: Device | undefined, { to, from }: Link): ZoneKind {
  if (device?.spec !== null) return device?.zone ?? 'cabin';
  const terminal = [from, to].find((end) => end.device === device.id)?.terminal ?? '';
  return device.groundZones[terminal] ?? device.zone;
}
