import type { Job, Link } from '../../../model/content/resolved-job.ts';
import { goesIn } from '../../../power/conductor/conductor-choice.ts';
import type { DevicesById } from '../../wiring/conductor-role.ts';
import { entersPort } from '../../wiring/joints.ts';
import { linkPorts } from './link-ports.ts';

/** True where both terminals of a link take a size, as it is or by a reducer of the catalogue. */
export function entersPorts(job: Job, devices: DevicesById, link: Link, areaMm2: number): boolean {
  return linkPorts(job, devices, link).every((port) => goesIn(areaMm2, port));
}

/** True where both terminals of a link take a size as it is, without a reducer. */
export function fitsPorts(job: Job, link: Link, areaMm2: number): boolean {
  return [link.from, link.to].every((end) => {
    if (!entersPort(job, link, end)) return true;
    const { device, terminal } = end;
    const takes = job.devices.find(({ id }) => id === device)?.facts.terminals[terminal]?.takes;
    return !takes || areaMm2 <= takes.to.areaMm2 * 1.001;
  });
}
