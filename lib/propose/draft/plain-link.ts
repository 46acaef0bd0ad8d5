import type { JobLink } from '../../model/content/job.ts';

/** True where a link of the job names no conductor, so that any that fits will do. */
export function isPlain({ wire, size, colour, conductors, joint }: JobLink): boolean {
  return [wire, size, colour, conductors, joint].every((one) => one === undefined);
}
