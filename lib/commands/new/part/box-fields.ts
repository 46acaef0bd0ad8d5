import type { Row } from '../ask/rows.ts';
import { known, type Named } from '../yaml-text.ts';
import { sizeRange } from './part-columns.ts';

/** The air of a box, and the cup at which a run to its speaker ends, where it has one. */
export function boxFields({ cells: { takes, strip, ...air } }: Row): Named {
  if (takes === undefined && strip === undefined) return air;
  const held = { ...(takes !== undefined && { takes: sizeRange(String(takes)) }), ...known({ strip }) };
  return { ...air, terminals: { CUP: { role: 'coil', joint: 'binding-post', ...held } } };
}
