import { type CircuitSymbol, port, shape, stroke } from './symbol.ts';

/** Diode, such as the one across a relay coil. */
export const diode: CircuitSymbol<'anode' | 'cathode'> = {
  what: 'Diode',
  strokes: [
    stroke([-2, 0], [2, 0]),
    shape([-0.6, -0.7], [-0.6, 0.7], [0.6, 0]),
    stroke([0.6, -0.7], [0.6, 0.7]),
  ],
  ports: { anode: port(-2, 0, 'left'), cathode: port(2, 0, 'right') },
};
