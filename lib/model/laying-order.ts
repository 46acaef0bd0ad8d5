import type { ConductorRole } from './vocabulary.ts';

/** Conductors in the order in which they are laid on a board: what lies lowest first, and the later passes over the earlier. */
export const layingOrder = [
  'signal',
  'control',
  'turn-on',
  'speaker',
  'power',
  'ground',
] as const satisfies readonly ConductorRole[];
