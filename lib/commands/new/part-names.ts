import type { KindName, Part } from '../../model/kinds/index.ts';

/** Parts of some kinds that the catalogue has, by their ids. */
export function partNames(
  parts: Readonly<Record<string, Part>>,
  ...kinds: readonly KindName[]
): readonly string[] {
  return Object.entries(parts).flatMap(([id, { kind }]) => (kinds.includes(kind) ? [id] : []));
}
