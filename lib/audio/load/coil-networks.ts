/** A series-parallel network of coils, which are told apart by their type (a number) alone. */
export type Network =
  | { readonly kind: 'leaf'; readonly type: number; readonly key: string }
  | { readonly kind: Joint; readonly members: readonly Network[]; readonly key: string };
type Joint = 'series' | 'parallel';

/** How many coils of each type are to be used. */
type Counts = readonly number[];

/** Lists already made, and whether any of them passed the limit. */
interface Search {
  readonly limit: number;
  readonly made: Map<string, readonly Network[]>;
  tooMany: boolean;
}

/**
 * Every distinct series-parallel network of a given number of leaves of each type, or null where there are
 * more than `limit`. A network is a leaf, or a group in series (parallel) of two or more networks that are no
 * series (parallel) groups themselves; the order within a group doesn't matter. Members are put together in
 * the order of their keys, so that no group comes twice. For n equal leaves the numbers are 1, 2, 4, 10, 24,
 * 66, 180, 522 (MacMahon 1892; OEIS A000084).
 */
export function enumerateNetworks(counts: Counts, limit: number): readonly Network[] | null {
  const search: Search = { limit, made: new Map(), tooMany: false };
  const networks = [...branches('series', counts, search), ...groups('series', counts, search)];
  return search.tooMany || networks.length > limit ? null : networks;
}

const total = (counts: Counts) => counts.reduce((sum, count) => sum + count, 0);

/** What may stand in a group of `kind`: a leaf, or a group of the other kind. */
function branches(kind: Joint, counts: Counts, search: Search): readonly Network[] {
  if (total(counts) !== 1) return groups(kind === 'series' ? 'parallel' : 'series', counts, search);
  const type = counts.indexOf(1);
  return [{ kind: 'leaf', type, key: String(type) }];
}

function groups(kind: Joint, counts: Counts, search: Search): readonly Network[] {
  if (total(counts) < 2) return [];
  const name = `${kind} ${counts.join(' ')}`;
  const known = search.made.get(name);
  if (known) return known;
  const found = memberLists(kind, counts, [], search).map(
    (members): Network => ({
      kind,
      members,
      key: `${kind}(${members.map((member) => member.key).join(',')})`,
    }),
  );
  search.made.set(name, found);
  return found;
}

/** Every way of completing `chosen` to a group that uses `left`, in the order of the members' keys. */
function memberLists(
  kind: Joint,
  left: Counts,
  chosen: readonly Network[],
  search: Search,
): readonly (readonly Network[])[] {
  if (total(left) === 0) return [chosen];
  const lists: (readonly Network[])[] = [];
  for (const part of partsOf(left)) {
    // A group takes two members or more: the first one can't be everything.
    if (chosen.length === 0 && total(part) === total(left)) continue;
    const rest = left.map((count, type) => count - (part[type] ?? 0));
    for (const member of branches(kind, part, search)) {
      if (search.tooMany) return lists;
      if (member.key < (chosen.at(-1)?.key ?? '')) continue;
      lists.push(...memberLists(kind, rest, [...chosen, member], search));
      if (lists.length > search.limit) search.tooMany = true;
    }
  }
  return lists;
}

/** Every choice of at least one coil out of `counts`. */
function partsOf(counts: Counts): readonly Counts[] {
  let parts: Counts[] = [[]];
  for (const count of counts)
    parts = parts.flatMap((part) => Array.from({ length: count + 1 }, (_, used) => [...part, used]));
  return parts.filter((part) => total(part) > 0);
}
