import type { BoardFigures } from './board-figures.ts';

/**
 * The fewest crossings that were found on the fixed boards with clearances kept, as the search of `--longest` finds them
 * (`fixed-rows.ts`): the wires are dressed five times as long from each of three seeds, with crossings at four times
 * their price. Of the van the seeds gave 87, 80 and 88 crossings, of the estate 20, 22 and 22, of the board under the
 * seat 5 each time, which is the proved bound. One wire of the estate is bent too tightly in all of them.
 */
export const leastFound: Readonly<Record<string, BoardFigures>> = {
  'van-three-amps': {
    crossings: 80,
    bends: 123,
    wireM: 28.837,
    partedPairs: 1,
    bundles: 2,
    tooNear: 0,
    tight: 0,
    missing: 0,
  },
  'estate-side-well': {
    crossings: 20,
    bends: 58,
    wireM: 10.637,
    partedPairs: 0,
    bundles: 2,
    tooNear: 0,
    tight: 1,
    missing: 0,
  },
  'under-seat-five': {
    crossings: 5,
    bends: 6,
    wireM: 1.531,
    partedPairs: 0,
    bundles: 1,
    tooNear: 0,
    tight: 0,
    missing: 0,
  },
};
