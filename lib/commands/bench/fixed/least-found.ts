import type { BoardFigures } from './board-figures.ts';

/**
 * The fewest crossings that were found on the fixed boards, with clearances and bend radii kept as far as they can be:
 * measured once by `rackleaf bench --part board --longest`, which dresses the wires five times as long from each of
 * three seeds, with crossings at four times their price.
 */
export const leastFound: Readonly<Record<string, Partial<BoardFigures>>> = {};
