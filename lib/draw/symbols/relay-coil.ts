import { type CircuitSymbol, port, shape, stroke } from './symbol.ts';

/** Coil of a relay. */
export const relayCoil: CircuitSymbol<'a' | 'b'> = {
  what: 'Relay coil',
  strokes: [
    shape([-1.5, -0.75], [1.5, -0.75], [1.5, 0.75], [-1.5, 0.75]),
    stroke([0, -2], [0, -0.75]),
    stroke([0, 0.75], [0, 2]),
  ],
  ports: { a: port(0, -2, 'up'), b: port(0, 2, 'down') },
};
