import { type Job, type Link, sharedTerminal } from '../../model/content/resolved-job.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import type { PlanBranch, PlanWire } from '../../model/plan/index.ts';
import { linkName } from '../../model/ports/pair-name.ts';

/**
 * Every place where two wires that share a terminal part ways: how far they go together, and the leg of each. What a
 * wire has beyond the parting point, with its loop at the far end, is its own leg.
 */
export function planBranches(job: Job, wires: readonly PlanWire[]): PlanBranch[] {
  return job.links.flatMap((link): PlanBranch[] => {
    const branch = link.given?.branch;
    if (!branch) return [];
    const trunk = trunkOf(job, link, branch.from);
    const terminal = trunk && sharedTerminal(link, trunk);
    if (!trunk || !terminal) return [];
    const legs = [trunk, link].flatMap(({ id }) => {
      const wire = wires.find((one) => one.id === id);
      if (!wire) return [];
      const ownM = ownLegM(job, wire, terminal, id === link.id ? branch.leg : null, branch.after);
      return [{ wire: id, label: wire.label, sharedM: wire.lengthM - ownM, ownM }];
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

/** The link that another one leaves: of a pair, the conductor at the same terminal. */
export function trunkOf(job: Pick<Job, 'links'>, link: Link, from: string): Link | undefined {
  return job.links.find((other) => linkName(other.id) === from && sharedTerminal(link, other) !== null);
}

/** Of the trunk, what its run has beyond the parting point; of the branch, its leg: each with the loop at its end. */
function ownLegM(job: Job, wire: PlanWire, shared: string, legM: number | null, partsAtM: number): number {
  const run = job.runs.find(({ id }) => id === wire.run);
  const runM = run ? routeLengthM(run.route) : wire.lengthM;
  const far = wire.ends.find((end) => end.terminal !== shared);
  return Math.min(wire.lengthM, (legM ?? Math.max(0, runM - partsAtM)) + (far?.loopM ?? 0));
}
