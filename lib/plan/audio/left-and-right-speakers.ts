import type { Device, Job } from '../../model/content/resolved-job.ts';

/** A left and a right speaker of one kind. */
export interface LeftAndRight {
  readonly left: Device;
  readonly right: Device;
}

/**
 * The pairs among the speakers of a job: of one part, in one kind of zone, as many left as right. Where there are
 * several, the nearest left one goes with the nearest right one; without their distances none is told from another.
 */
export function leftAndRightSpeakers(job: Job): readonly LeftAndRight[] {
  const speakers = job.devices.filter(({ spec }) => spec?.kind === 'speaker');
  const kinds = new Set(speakers.map(kindOf));
  return [...kinds].flatMap((kind): LeftAndRight[] => {
    const own = speakers.filter((one) => kindOf(one) === kind);
    const [lefts, rights] = [ranked(job, own, 'left'), ranked(job, own, 'right')];
    if (lefts.length !== rights.length || (lefts.length > 1 && !isMeasured(job, own))) return [];
    return lefts.flatMap((left, index) => {
      const right = rights[index];
      return right ? [{ left, right }] : [];
    });
  });
}

const kindOf = ({ part, zone }: Device) => `${part} in ${zone}`;
const distanceOf = (job: Job, { seat }: Device) => job.vehicle.places[seat ?? '']?.distance;
const isMeasured = (job: Job, speakers: readonly Device[]) =>
  speakers.every((one) => distanceOf(job, one) !== undefined);

function ranked(job: Job, speakers: readonly Device[], side: Device['side']): readonly Device[] {
  return speakers
    .filter((one) => one.side === side)
    .toSorted((a, b) => (distanceOf(job, a) ?? 0) - (distanceOf(job, b) ?? 0));
}
