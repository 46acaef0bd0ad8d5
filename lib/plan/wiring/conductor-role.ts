import type { Device, Link, LinkEnd } from '../../model/content/resolved-job.ts';
import type { ConductorRole, TerminalRole } from '../../model/vocabulary.ts';

/** What a terminal makes of a conductor that ends in it, where nothing weightier is at the other end. */
const roleOfTerminal: Readonly<Record<TerminalRole, ConductorRole>> = {
  'signal-in': 'signal',
  'signal-out': 'signal',
  'speaker-in-positive': 'signal',
  'speaker-in-negative': 'signal',
  'control-line': 'control',
  sense: 'control',
  'turn-on-in': 'turn-on',
  'turn-on-out': 'turn-on',
  'relay-coil': 'turn-on',
  'speaker-out-positive': 'speaker',
  'speaker-out-negative': 'speaker',
  'coil-positive': 'speaker',
  'coil-negative': 'speaker',
  'source-negative': 'ground',
  'supply-negative': 'ground',
  'ground-bar': 'ground',
  body: 'ground',
  'source-positive': 'power',
  'supply-positive': 'power',
  'feed-in': 'power',
  'feed-out': 'power',
  'relay-contact': 'power',
};

/**
 * Which of two ends decides, the first that either end has. A conductor to the body is a ground whatever its
 * other end; a speaker output into a high-level input carries a signal, not power for a coil; a relay coil
 * fed from a fuse is a turn-on conductor, and its return is a ground.
 */
const precedence: readonly ConductorRole[] = ['ground', 'signal', 'control', 'turn-on', 'power', 'speaker'];

/** The devices of a job by id. */
export type DevicesById = ReadonlyMap<string, Device>;

/** The role of a terminal, by its part. The reader has looked every name up, so an unknown one is a bug. */
export function terminalRole(devices: DevicesById, end: LinkEnd): TerminalRole {
  const role = devices.get(end.device)?.facts.terminals[end.terminal]?.role;
  if (!role)
    throw new Error(`No terminal ${end.device}.${end.terminal}: the reader let an unknown name through.`);
  return role;
}

/** What the conductor of a link carries. */
export function conductorRole(devices: DevicesById, link: Link): ConductorRole {
  const ends = [link.from, link.to].map((end) => roleOfTerminal[terminalRole(devices, end)]);
  return precedence.find((role) => ends.includes(role)) ?? 'control';
}
