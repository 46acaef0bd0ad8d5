import type { ConductorRole, TerminalRole } from '../vocabulary.ts';

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

/** What a conductor between terminals of these roles carries. */
export function roleBetween(terminals: readonly TerminalRole[]): ConductorRole {
  const ends = terminals.map((one) => roleOfTerminal[one]);
  return precedence.find((role) => ends.includes(role)) ?? 'control';
}
