import { type CircuitSymbol, port, shape, stroke } from './symbol.ts';

/** Amplifier: the triangle points the way that the signal goes. */
export const amplifier: CircuitSymbol<'in' | 'out' | 'supply' | 'ground'> = {
  what: 'Amplifier',
  strokes: [
    shape([-2, -2], [-2, 2], [2, 0]),
    stroke([-3, 0], [-2, 0]),
    stroke([2, 0], [3, 0]),
    stroke([0, -2], [0, -1]),
    stroke([0, 1], [0, 2]),
  ],
  ports: {
    in: port(-3, 0, 'left'),
    out: port(3, 0, 'right'),
    supply: port(0, -2, 'up'),
    ground: port(0, 2, 'down'),
  },
};
