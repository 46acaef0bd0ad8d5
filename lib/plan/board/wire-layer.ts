import type { WireLayer } from '../../board/layout/item.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';

/** Layer that a conductor is laid in on the board. Control wires go with the signal; a turn-on wire disturbs nothing. */
export const layerOfRole: Readonly<Record<ConductorRole, WireLayer>> = {
  power: 'power',
  ground: 'ground',
  speaker: 'speaker',
  signal: 'signal',
  'turn-on': 'speaker',
  control: 'signal',
};
