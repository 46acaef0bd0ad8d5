import { audioComputations } from './audio.ts';
import { benchComputations } from './bench.ts';
import { boardComputations } from './board.ts';
import type { Computation } from './computation.ts';
import { powerComputations } from './power.ts';
import { wiringComputations } from './wiring.ts';

export { type Computation, isFieldOf, isFormulaOf, isSourceOf } from './computation.ts';

/** Every quantity that the project computes, by family. */
export const computationFamilies = {
  power: { title: 'Supply, fuses and heat', computations: powerComputations },
  wiring: { title: 'Conductors and their ends', computations: wiringComputations },
  audio: { title: 'Channels, levels and delays', computations: audioComputations },
  board: { title: 'Boards', computations: boardComputations },
  bench: { title: 'Bench calculators', computations: benchComputations },
} as const;

/** Every quantity by the id that its traces carry as their rule. */
export const computationCatalogue = {
  ...powerComputations,
  ...wiringComputations,
  ...audioComputations,
  ...boardComputations,
  ...benchComputations,
} as const;

export type ComputationId = keyof typeof computationCatalogue;

/** True for the id of a quantity of the catalogue. */
export function isComputationId(id: string): id is ComputationId {
  return Object.hasOwn(computationCatalogue, id);
}

/** The entry of a quantity. */
export function computation(id: ComputationId): Computation {
  return computationCatalogue[id];
}
