import type { Job, Link } from '../model/resolved-job.ts';

/** True where both terminals of a link take a size as it is, without a reducer. */
export function fitsPorts(job: Job, { from, to }: Link, areaMm2: number): boolean {
  return [from, to].every(({ device, terminal }) => {
    const takes = job.devices.find(({ id }) => id === device)?.facts.terminals[terminal]?.takes;
    return !takes || areaMm2 <= takes.to.areaMm2 * 1.001;
  });
}
