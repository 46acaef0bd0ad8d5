import { type CircuitSymbol, port, shape, stroke } from './symbol.ts';

/** Fuse: the conductor runs through the rectangle. */
export const fuse: CircuitSymbol<'a' | 'b'> = {
  what: 'Fuse',
  strokes: [shape([-1.5, -0.5], [1.5, -0.5], [1.5, 0.5], [-1.5, 0.5]), stroke([-2, 0], [2, 0])],
  ports: { a: port(-2, 0, 'left'), b: port(2, 0, 'right') },
};
