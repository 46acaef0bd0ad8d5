/**
 * The known name that was most likely meant: the one with the least Damerau-Levenshtein distance (one
 * letter left out, added, exchanged, or two neighbours swapped), upper and lower case alike. Null where
 * none is near, which is a third of the longer name's letters at most. Equal ones: the first by code units.
 */
export function nearestName(wanted: string, known: Iterable<string>): string | null {
  let best: { readonly name: string; readonly distance: number } | null = null;
  for (const name of known) {
    if (name === wanted) return name;
    const longer = Math.max(name.length, wanted.length);
    const limit = Math.max(1, Math.floor(longer / 3));
    if (longer - Math.min(name.length, wanted.length) > limit) continue;
    const distance = editDistance(wanted.toLowerCase(), name.toLowerCase());
    // B+ and B- are one letter apart, and opposites: names so short are near in nothing but their case.
    if (distance > limit || (longer <= 2 && distance > 0)) continue;
    if (!best || distance < best.distance || (distance === best.distance && name < best.name))
      best = { name, distance };
  }
  return best?.name ?? null;
}

/** The most names of which one may have been meant that are read at a glance. */
const mostNear = 6;

/**
 * Every known name that may have been meant, best first: those that begin with what was written, or that it begins with,
 * then those within the reach of `nearestName`, nearest first. Equal ones by code units.
 */
export function nearNames(wanted: string, known: Iterable<string>): readonly string[] {
  const low = wanted.toLowerCase();
  const isPrefix = (name: string) =>
    low !== '' && (name.toLowerCase().startsWith(low) || low.startsWith(name.toLowerCase()));
  const near = [...new Set(known)].filter((name) => isPrefix(name) || nearestName(wanted, [name]) !== null);
  const rank = (name: string) => (isPrefix(name) ? 0 : 1);
  const distance = (name: string) => editDistance(low, name.toLowerCase());
  return near
    .toSorted((a, b) => rank(a) - rank(b) || distance(a) - distance(b) || (a < b ? -1 : 1))
    .slice(0, mostNear);
}

/**
 * Damerau-Levenshtein distance between two texts, by UTF-16 units, with transpositions of neighbours that
 * may have been edited in between (Damerau 1964, Levenshtein 1966, in the form of Lowrance and Wagner 1975).
 */
export function editDistance(a: string, b: string): number {
  const far = a.length + b.length;
  const table = Array.from({ length: a.length + 2 }, () => new Array<number>(b.length + 2).fill(far));
  const at = (i: number, j: number): number => table[i]?.[j] ?? far;
  const put = (i: number, j: number, value: number): void => {
    const row = table[i];
    if (row) row[j] = value;
  };
  for (let i = 0; i <= a.length; i++) put(i + 1, 1, i);
  for (let j = 0; j <= b.length; j++) put(1, j + 1, j);
  const lastRowOf = new Map<string, number>();
  for (let i = 1; i <= a.length; i++) {
    let lastMatch = 0;
    for (let j = 1; j <= b.length; j++) {
      const row = lastRowOf.get(b.charAt(j - 1)) ?? 0;
      const column = lastMatch;
      const same = a.charAt(i - 1) === b.charAt(j - 1);
      if (same) lastMatch = j;
      const swapped = at(row, column) + (i - row - 1) + 1 + (j - column - 1);
      const replaced = at(i, j) + (same ? 0 : 1);
      put(i + 1, j + 1, Math.min(swapped, replaced, at(i + 1, j) + 1, at(i, j + 1) + 1));
    }
    lastRowOf.set(a.charAt(i - 1), i);
  }
  return at(a.length + 1, b.length + 1);
}
