import { type Job, type Link, linkEndOf, sharedTerminal } from '../../model/content/resolved-job.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import type { PlanBranch, PlanWire } from '../../model/plan/index.ts';
import { trunkOf } from './branches.ts';
import type { DevicesById } from './conductor-role.ts';
import { hingesBefore, ownWay } from './runs/own-way.ts';
import { isCutToMeasure } from './wire-lengths.ts';

/**
 * Every place where two wires that share a terminal part ways: how far they go together, and the leg of each. What a
 * wire has beyond the parting point, with its loop at the far end, is its own leg.
 */
export function planBranches(job: Job, devices: DevicesById, wires: readonly PlanWire[]): PlanBranch[] {
  return job.links.flatMap((link): PlanBranch[] => {
    const branch = link.given?.branch;
    if (!branch) return [];
    const trunk = trunkOf(job, link, branch.from);
    const terminal = trunk && sharedTerminal(link, trunk);
    if (!trunk || !terminal) return [];
    const legs = [trunk, link].flatMap((one) => {
      const wire = wires.find(({ id }) => id === one.id);
      if (!wire) return [];
      const legM = one === link ? branch.leg : null;
      const ownM = ownLegM(job, devices, { link: one, wire, shared: terminal, legM, partsAtM: branch.after });
      return [{ wire: wire.id, label: wire.label, sharedM: wire.lengthM - ownM, ownM }];
    });
    const labels = legs.map(({ label }) => label).join(' and ');
    return [
      {
        id: link.id,
        from: trunk.id,
        terminal,
        partsAtM: branch.after,
        legs,
        facing: `${labels} are tied together from ${terminal} to where they part and can't be turned over later: before the tie, turn both so that their labels read from ${terminal} outwards and the sign of each faces its own post`,
      },
    ];
  });
}

interface Leg {
  readonly link: Link;
  readonly wire: PlanWire;
  readonly shared: string;
  /** Of the branch; null for the trunk. */
  readonly legM: number | null;
  readonly partsAtM: number;
}

/** Of the trunk, what its run has beyond the parting point; of the branch, its leg: each with its hinges and the loop at its end. */
function ownLegM(job: Job, devices: DevicesById, { link, wire, shared, legM, partsAtM }: Leg): number {
  const run = job.runs.find(({ id }) => id === wire.run);
  const runM = run ? routeLengthM(run.route) : wire.lengthM;
  const far = wire.ends.find((end) => end.terminal !== shared);
  const before = run ? hingesBefore(job, devices, { link, run, end: linkEndOf(shared) }, partsAtM) : 0;
  const hinges = isCutToMeasure(job, link) ? Math.max(0, ownWay(job, devices, link).hinges - before) : 0;
  const slackM = hinges * job.rules['hinge-slack'].value;
  return Math.min(wire.lengthM, (legM ?? Math.max(0, runM - partsAtM)) + slackM + (far?.loopM ?? 0));
}
