/**
 * The fewest slips that make one word of another, up to `most`; more than that are told as `most + 1`. A slip is a letter
 * too many, one that is missing, a wrong one, or two neighbours that changed places (optimal string alignment).
 */
export function slipsBetween(one: string, other: string, most: number): number {
  if (Math.abs(one.length - other.length) > most) return most + 1;
  let [twoBack, back]: [number[], number[]] = [[], Array.from({ length: other.length + 1 }, (_, n) => n)];
  for (let i = 1; i <= one.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= other.length; j += 1) {
      const same = one[i - 1] === other[j - 1] ? 0 : 1;
      const swapped = i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1];
      const least = Math.min(
        (back[j] ?? 0) + 1,
        (row[j - 1] ?? 0) + 1,
        (back[j - 1] ?? 0) + same,
        swapped ? (twoBack[j - 2] ?? 0) + 1 : most + 1,
      );
      row.push(least);
    }
    if (Math.min(...row) > most) return most + 1;
    [twoBack, back] = [back, row];
  }
  return Math.min(back[other.length] ?? 0, most + 1);
}

/** Words of an index, with the number of pages that each is on. */
export type KnownWords = ReadonlyMap<string, number>;

/** Slips that are put right in a word of so many letters: none in a short one, where every word is near to another. */
function slipsAllowed(letters: number): number {
  return letters < 4 ? 0 : letters < 6 ? 1 : 2;
}

/**
 * The known word that was most likely meant by one that is not known: with the fewest slips, then with the same first
 * letter, then on the most pages; null where none is near.
 */
export function nearestWord(word: string, known: KnownWords): string | null {
  const most = slipsAllowed(word.length);
  if (most === 0) return null;
  const near = [...known]
    .filter(([one]) => /^[a-z]+$/.test(one) && one.length >= 4)
    .map(([one, pages]) => ({ one, pages, slips: slipsBetween(word, one, most) }))
    .filter(({ slips }) => slips <= most)
    .sort(
      (a, b) =>
        a.slips - b.slips ||
        Number(b.one[0] === word[0]) - Number(a.one[0] === word[0]) ||
        b.pages - a.pages ||
        (a.one < b.one ? -1 : 1),
    );
  return near[0]?.one ?? null;
}

/** The two known words that were typed as one, each of three letters at least; null where there are none. */
export function splitWord(
  word: string,
  known: KnownWords,
  plain: (word: string) => string,
): readonly string[] | null {
  for (let at = word.length - 3; at >= 3; at -= 1) {
    const halves = [plain(word.slice(0, at)), plain(word.slice(at))];
    if (halves.every((half) => known.has(half))) return halves;
  }
  return null;
}
