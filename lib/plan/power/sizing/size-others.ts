import { type Link, terminalId } from '../../../model/content/resolved-job.ts';
import { amps, ampsDrawn } from '../../../model/printed/told.ts';
import type { Remark } from '../../../model/remark.ts';
import type { ConductorRole } from '../../../model/vocabulary.ts';
import { terminalRole } from '../../wiring/conductor-role.ts';
import type { SizedConductor } from './conductor-sizing.ts';
import type { SizedFuse } from './fuse-sizing.ts';
import type { PowerSizing } from './power-sizing.ts';

/**
 * Sizes every conductor that is no part of the supply network: speaker, signal, turn-on and control wires. A turn-on
 * wire carries what its source can give, which limits it; one from a fused way or a relay's contact must carry
 * the fuse before it.
 */
export function sizeOthers(
  sizing: PowerSizing,
  fuses: readonly SizedFuse[],
): ReadonlyMap<string, SizedConductor> {
  const { job, circuit, lengths, least, sizer } = sizing;
  const ratings = new Map(
    fuses.map(({ edge, ratingA: rating, ratedA }) => [
      edge.id,
      rating ?? ratedA * job.rules['fuse-margin'].value,
    ]),
  );
  const ratingA = (fuse: string) => ratings.get(fuse) ?? Number.POSITIVE_INFINITY;
  const sized = new Map<string, SizedConductor>();
  for (const link of job.links) {
    const role: ConductorRole | undefined = circuit.roles.get(link.id);
    if (!role || role === 'power' || role === 'ground') continue;
    const needed = role === 'turn-on' ? turnOnNeedA(sizing, link, ratingA) : 0;
    const { areaMm2, why } = least.of(link.id);
    const one = sizer.size({
      link,
      role,
      lengthM: lengths(link.id).lengthM,
      neededA: needed,
      ratedA: needed,
      leastMm2: areaMm2,
      why: why || null,
    });
    least.raise(link.id, one.cable.size.areaMm2, why);
    sized.set(link.id, role === 'turn-on' ? withFuseRemark(one, needed) : one);
  }
  return sized;
}

/**
 * What a turn-on wire must carry (A): what its source gives at most, or all that the fuses before it let through: of
 * fuses in a row the least, of those side by side or from several sources their sum.
 */
function turnOnNeedA({ devices, paths }: PowerSizing, link: Link, ratingA: (fuse: string) => number): number {
  const ends = [link.from, link.to];
  const limits = ends
    .filter((end) => terminalRole(devices, end) === 'turn-on-out')
    .map((end) => devices.get(end.device)?.facts.terminals[end.terminal]?.current ?? 0);
  if (limits.length > 0) return Math.max(...limits);
  return Math.max(...ends.map((end) => paths.inflows.jointA([terminalId(end)], ratingA)));
}

/** A size that the job gives is kept; that it is too thin for its fuse stops the job. */
function withFuseRemark(one: SizedConductor, neededA: number): SizedConductor {
  const carriesA = one.judged?.ampacity.ampacityA.value ?? 0;
  const { id } = one.link;
  if (carriesA >= neededA || one.remarks.some(({ level }) => level === 'stop')) return one;
  const remark: Remark = {
    rule: 'turn-on-wire-under-fuse',
    level: 'stop',
    of: [id],
    message: `${id} (${one.cable.size.label}) carries ${amps(carriesA)}, and the fuse before it lets ${ampsDrawn(neededA)} through`,
    value: carriesA,
    limit: neededA,
    unit: 'A',
    remedy: 'put a smaller fuse before it, or a larger conductor',
  };
  return { ...one, remarks: [...one.remarks, remark] };
}
