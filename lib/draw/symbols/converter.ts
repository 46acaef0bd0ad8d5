import { type CircuitSymbol, port, shape, stroke } from './symbol.ts';

/** Converter from direct current to direct current: both marks in a square, parted by its diagonal. */
export const converter: CircuitSymbol<'input' | 'output'> = {
  what: 'Converter, direct current to direct current',
  strokes: [
    shape([-1.5, -1.5], [1.5, -1.5], [1.5, 1.5], [-1.5, 1.5]),
    stroke([-1.5, 1.5], [1.5, -1.5]),
    stroke([-1.2, -1], [-0.2, -1]),
    stroke([-1.2, -0.65], [-0.95, -0.65]),
    stroke([-0.82, -0.65], [-0.57, -0.65]),
    stroke([-0.45, -0.65], [-0.2, -0.65]),
    stroke([0.2, 0.65], [1.2, 0.65]),
    stroke([0.2, 1], [0.45, 1]),
    stroke([0.57, 1], [0.82, 1]),
    stroke([0.95, 1], [1.2, 1]),
    stroke([-2, 0], [-1.5, 0]),
    stroke([1.5, 0], [2, 0]),
  ],
  ports: { input: port(-2, 0, 'left'), output: port(2, 0, 'right') },
};
