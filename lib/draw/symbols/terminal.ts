import { type CircuitSymbol, mod, port } from './symbol.ts';

/** Terminal: a joint that can be undone. */
export const terminal: CircuitSymbol<'a'> = {
  what: 'Terminal',
  strokes: [{ kind: 'circle', centre: mod(0, 0), radiusMm: 0.9 }],
  ports: { a: port(0, 0, 'left') },
};
