import { type CircuitSymbol, port, stroke } from './symbol.ts';

/** Ground (earth). The origin is its port. */
export const ground: CircuitSymbol<'a'> = {
  what: 'Ground',
  strokes: [
    stroke([0, 0], [0, 1]),
    stroke([-1.2, 1], [1.2, 1]),
    stroke([-0.8, 1.45], [0.8, 1.45]),
    stroke([-0.4, 1.9], [0.4, 1.9]),
  ],
  ports: { a: port(0, 0, 'up') },
};
