/** Lines that stand in one text and not in the other, at a line of the first. */
interface Passage {
  /** The line of the first text that it begins at, counted from 1. */
  readonly line: number;
  readonly gone: readonly string[];
  readonly come: readonly string[];
}

/**
 * Two texts of one file as their difference: each passage with its place, then the lines that go with `-` and those that
 * come with `+` before them.
 */
export function differenceText(path: string, before: string, after: string): string {
  return passages(linesOf(before), linesOf(after))
    .map(({ line, gone, come }) =>
      [`${path}:${line}`, ...gone.map((one) => `- ${one}`), ...come.map((one) => `+ ${one}`)].join('\n'),
    )
    .join('\n');
}

function linesOf(text: string): readonly string[] {
  return text.split(/\r\n|\r|\n/);
}

/** The passages between the lines that both have, after the longest sequence of lines that they share. */
function passages(a: readonly string[], b: readonly string[]): readonly Passage[] {
  const shared = sharedBehind(a, b);
  const found: Passage[] = [];
  let [i, j] = [0, 0];
  while (i < a.length || j < b.length) {
    const line = i + 1;
    const [gone, come]: [string[], string[]] = [[], []];
    while ((i < a.length || j < b.length) && (i >= a.length || j >= b.length || a[i] !== b[j])) {
      const [skipA, skipB] = [shared(i + 1, j), shared(i, j + 1)];
      if (i < a.length && (j >= b.length || skipA >= skipB)) gone.push(a[i++] ?? '');
      else come.push(b[j++] ?? '');
    }
    if (gone.length > 0 || come.length > 0) found.push({ line, gone, come });
    i += 1;
    j += 1;
  }
  return found;
}

/** How many lines two texts share in order from a line of each on. */
function sharedBehind(a: readonly string[], b: readonly string[]): (i: number, j: number) => number {
  const width = b.length + 1;
  const counts = new Uint32Array((a.length + 1) * width);
  const at = (i: number, j: number): number =>
    i > a.length || j > b.length ? 0 : (counts[i * width + j] ?? 0);
  for (let i = a.length - 1; i >= 0; i -= 1)
    for (let j = b.length - 1; j >= 0; j -= 1)
      counts[i * width + j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
  return at;
}
