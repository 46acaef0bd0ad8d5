import type { Job } from '../../model/content/resolved-job.ts';
import type { WireEnd } from '../../model/plan/index.ts';
import { barrelStripM } from '../../power/conductor/strip-length.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { noSplice } from './end-remarks.ts';
import { type Joined, jointPrep, splicePart } from './joints.ts';
import { dieOf, type PreparedEnd } from './prepared-end.ts';
import { stripLength } from './strip-lengths.ts';

/** An end that is joined to another wire: what the splice is, and how far it is stripped for it. */
export function joinedEnd(
  job: Job,
  joined: Joined,
  own: SizedConductor,
  base: Omit<WireEnd, 'prep'>,
  sized: ReadonlyMap<string, SizedConductor>,
  trunkLabel: string,
): PreparedEnd {
  const part = splicePart(job, joined, own.link, sized);
  const spec = part === null ? undefined : job.parts[part];
  const strip = stripLength(job, { part }, barrelStripM(own.cable.size.areaMm2));
  return {
    end: {
      ...base,
      ...jointPrep(trunkLabel),
      part,
      stripM: strip.value,
      ...dieOf(job.parts, part),
    },
    workings: { stripM: strip },
    remarks:
      spec === undefined ? [noSplice(own, joined, sized.get(joined.trunk.id)?.cable.size.label ?? '')] : [],
  };
}
