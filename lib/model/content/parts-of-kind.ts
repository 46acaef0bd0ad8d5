import type { KindName, Part, PartOf } from '../kinds/index.ts';

/** A catalogue: parts by their ids. */
type Parts = Readonly<Record<string, Part>>;

/** A part of one kind, with its id. */
export type NamedPart<K extends KindName> = readonly [id: string, part: PartOf<K>];

type Shelves = { readonly [K in KindName]?: readonly NamedPart<K>[] };

/** Catalogues that were sorted before: each is asked for its kinds some thousand times a plan. */
const sorted = new WeakMap<Parts, Shelves>();

/** The parts of a kind, with their ids, in the order of the catalogue. A catalogue that was asked once must not change. */
export function partsOfKind<K extends KindName>(parts: Parts, kind: K): readonly NamedPart<K>[] {
  const known: Shelves = sorted.get(parts) ?? {};
  const own: Shelves[K] = known[kind];
  if (own) return own;
  const found = Object.entries(parts).flatMap(([id, part]) =>
    isOfKind(part, kind) ? [[id, part] as const] : [],
  );
  sorted.set(parts, { ...known, [kind]: found });
  return found;
}

function isOfKind<K extends KindName>(part: Part, kind: K): part is PartOf<K> {
  return part.kind === kind;
}
