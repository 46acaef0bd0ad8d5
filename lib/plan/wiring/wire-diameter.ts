import type { Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import { type Traced, traced } from '../../model/trace.ts';
import { outsideDiameterM } from '../../power/conductor/bundle-diameter.ts';
import type { CableCandidate } from '../../power/conductor/conductor-choice.ts';

/** What a wire is taken to be across while nothing is known of it, metres: common practice, no source. */
export const unknownDiameterM = 0.002;

/** Outside diameter of a cut wire: by its part, or by the stated model of strands and wall. */
export function wireDiameterM(job: Job, cable: Pick<CableCandidate, 'part' | 'size'>): number {
  return wireDiameter(job, cable)?.value ?? unknownDiameterM;
}

/** The same with its working; null for a conductor without area. */
export function wireDiameter(
  job: Job,
  { part, size }: Pick<CableCandidate, 'part' | 'size'>,
): Traced<number> | null {
  const reel = job.parts[part];
  if (reel?.kind === 'wire' && reel['outside-diameter'] !== undefined)
    return traced(reel['outside-diameter'], 'm', {
      origin: 'given',
      rule: 'conductor-diameter',
      citation: "the part's data",
    });
  const model = outsideDiameterM(size.areaMm2);
  return isFault(model) ? null : model;
}
