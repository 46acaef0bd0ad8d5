import { type CircuitSymbol, plusMark, port, shape, stroke } from './symbol.ts';

/** Loudspeaker. */
export const loudspeaker: CircuitSymbol<'plus' | 'minus'> = {
  what: 'Loudspeaker',
  strokes: [
    shape([-1, -1], [0, -1], [0, 1], [-1, 1]),
    stroke([0, -1], [1, -2], [1, 2], [0, 1]),
    stroke([-2, -0.5], [-1, -0.5]),
    stroke([-2, 0.5], [-1, 0.5]),
    ...plusMark(-1.5, -1.1),
  ],
  ports: { plus: port(-2, -0.5, 'left'), minus: port(-2, 0.5, 'left') },
};
