import type { Device, Job, Link, LinkEnd } from '../../model/content/resolved-job.ts';
import { roleBetween } from '../../model/ports/conductor-roles.ts';
import type { ConductorRole, TerminalRole } from '../../model/vocabulary.ts';

/** Devices by their ids. */
export type DevicesById = ReadonlyMap<string, Device>;

/** The devices of a job by their ids. */
export function devicesById({ devices }: Pick<Job, 'devices'>): DevicesById {
  return new Map(devices.map((device) => [device.id, device]));
}

/** The role of a terminal, by its part. The reader has looked every name up, so an unknown one is a bug. */
export function terminalRole(devices: DevicesById, end: LinkEnd): TerminalRole {
  const role = devices.get(end.device)?.facts.terminals[end.terminal]?.role;
  if (!role)
    throw new Error(`No terminal ${end.device}.${end.terminal}: the reader let an unknown name through.`);
  return role;
}

/** What the conductor of a link carries. */
export function conductorRole(devices: DevicesById, link: Link): ConductorRole {
  return roleBetween([link.from, link.to].map((end) => terminalRole(devices, end)));
}
