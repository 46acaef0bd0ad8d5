import { type CircuitSymbol, port, stroke } from './symbol.ts';

/** Make contact of a switch or relay, at rest. */
export const makeContact: CircuitSymbol<'a' | 'b'> = {
  what: 'Make contact, switch or relay',
  strokes: [stroke([-2, 0], [-1, 0], [0.9, -1.1]), stroke([1, 0], [2, 0])],
  ports: { a: port(-2, 0, 'left'), b: port(2, 0, 'right') },
};
