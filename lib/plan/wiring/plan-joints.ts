import { type Job, linkEndOf } from '../../model/content/resolved-job.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import type { PlanJoint, PlanWire } from '../../model/plan/index.ts';
import type { DevicesById } from './conductor-role.ts';
import { type Joined, joinedTo } from './joints.ts';
import { hingesBefore, ownWay } from './runs/own-way.ts';

/** Every joint of a job: one after the other along the wire where several lie on it, the first nearest to the port. */
export function planJoints(job: Job, devices: DevicesById, wires: readonly PlanWire[]): PlanJoint[] {
  const apartM = job.rules['joint-from-port'].value;
  const before = new Map<string, number>();
  return job.links.flatMap((link): PlanJoint[] => {
    const joined = joinedTo(job, link);
    const wire = wires.find(({ id }) => id === link.id);
    const trunk = joined && wires.find(({ id }) => id === joined.trunk.id);
    if (!joined || !wire || !trunk) return [];
    const key = `${trunk.id} ${joined.terminal}`;
    const nth = (before.get(key) ?? 0) + (joined.alongM === null ? 1 : 0);
    before.set(key, nth);
    const onWayM =
      joined.alongM === null ? null : toJointM(job, devices, trunk, { ...joined, alongM: joined.alongM });
    return [
      {
        ...{ id: wire.id, label: wire.label, trunk: trunk.id, trunkLabel: trunk.label },
        ...{ terminal: joined.terminal, distanceM: onWayM ?? nth * apartM },
        ...(joined.alongM !== null && { at: joined.at ?? 'its way' }),
        part: wire.ends.find(({ terminal }) => terminal === joined.terminal)?.part ?? null,
      },
    ];
  });
}

/**
 * How far a joint on the way of a wire lies from one of its terminals (m): its loop there, its way on the board where the
 * terminal is on one, and its run up to the joint, with the slack at each hinge before it.
 */
function toJointM(
  job: Job,
  devices: DevicesById,
  wire: PlanWire,
  { trunk, terminal, at, alongM }: Joined & { readonly alongM: number },
): number {
  const run = job.runs.find(({ id }) => id === wire.run);
  const end = linkEndOf(terminal);
  const device = devices.get(end.device);
  if (!run || !device) return alongM;
  const slackM = job.rules['hinge-slack'].value;
  const hingesM = hingesBefore(job, devices, { link: trunk, run, end, place: at }, alongM) * slackM;
  const loopM = wire.ends.find((one) => one.terminal === terminal)?.loopM ?? 0;
  const loopsM = wire.ends.reduce((sum, one) => sum + (one.loopM ?? 0), 0);
  const inVehicleM = routeLengthM(run.route) + ownWay(job, devices, trunk).hinges * slackM + loopsM;
  const boardM = device.board === null ? 0 : Math.max(0, wire.lengthM - inVehicleM);
  return boardM + alongM + hingesM + loopM;
}
