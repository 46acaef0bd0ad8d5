import { type CircuitSymbol, plusMark, port, stroke } from './symbol.ts';

/** Cell or battery: the longer stroke is the positive side. */
export const battery: CircuitSymbol<'plus' | 'minus'> = {
  what: 'Battery',
  strokes: [
    stroke([-2, 0], [-0.25, 0]),
    stroke([-0.25, -1.5], [-0.25, 1.5]),
    stroke([0.25, -0.75], [0.25, 0.75]),
    stroke([0.25, 0], [2, 0]),
    ...plusMark(-1, -1),
  ],
  ports: { plus: port(-2, 0, 'left'), minus: port(2, 0, 'right') },
};
