import { type CircuitSymbol, port, stroke } from './symbol.ts';

/** Frame or chassis: the body of the vehicle. The origin is its port. */
export const chassis: CircuitSymbol<'a'> = {
  what: 'Chassis (vehicle body)',
  strokes: [
    stroke([0, 0], [0, 1]),
    stroke([-1.2, 1], [1.2, 1]),
    stroke([-1.2, 1], [-1.7, 2]),
    stroke([0, 1], [-0.5, 2]),
    stroke([1.2, 1], [0.7, 2]),
  ],
  ports: { a: port(0, 0, 'up') },
};
