import { type CircuitSymbol, mod, plusMark, port, stroke } from './symbol.ts';

/** Generator with rectified output: G in a circle, above the strokes for direct current. */
export const generator: CircuitSymbol<'plus' | 'minus'> = {
  what: 'Generator (alternator), direct current',
  strokes: [
    { kind: 'circle', centre: mod(0, 0), radiusMm: 5 },
    { kind: 'letters', text: 'G', centre: mod(0, -0.4) },
    stroke([-0.75, 0.75], [0.75, 0.75]),
    stroke([-0.75, 1.1], [-0.35, 1.1]),
    stroke([-0.2, 1.1], [0.2, 1.1]),
    stroke([0.35, 1.1], [0.75, 1.1]),
    stroke([0, -3], [0, -2]),
    stroke([0, 2], [0, 3]),
    ...plusMark(0.75, -2.5),
  ],
  ports: { plus: port(0, -3, 'up'), minus: port(0, 3, 'down') },
};
