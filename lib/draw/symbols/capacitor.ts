import { type CircuitSymbol, port, stroke } from './symbol.ts';

/** Capacitor. */
export const capacitor: CircuitSymbol<'a' | 'b'> = {
  what: 'Capacitor',
  strokes: [
    stroke([-2, 0], [-0.3, 0]),
    stroke([-0.3, -1], [-0.3, 1]),
    stroke([0.3, -1], [0.3, 1]),
    stroke([0.3, 0], [2, 0]),
  ],
  ports: { a: port(-2, 0, 'left'), b: port(2, 0, 'right') },
};
