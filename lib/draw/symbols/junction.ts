import { type CircuitSymbol, mod, port } from './symbol.ts';

/** Conductors that are joined. */
export const junction: CircuitSymbol<'a'> = {
  what: 'Junction',
  strokes: [{ kind: 'circle', centre: mod(0, 0), radiusMm: 0.9, filled: true }],
  ports: { a: port(0, 0, 'left') },
};
