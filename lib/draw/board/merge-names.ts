/** Names that share one text, and the indices of those that they stand for. */
export interface MergedName {
  readonly text: string;
  readonly of: readonly number[];
}

interface Parsed {
  readonly stem: string;
  readonly number: number | null;
  readonly sign: string;
}

function parse(name: string): Parsed {
  const [, stem = name, digits = '', sign = ''] = /^(.*?)(\d*)([+-]?)$/.exec(name) ?? [];
  return { stem, number: digits === '' ? null : Number(digits), sign };
}

/** Every name by itself. */
export function single(names: readonly string[]): MergedName[] {
  return names.map((text, index) => ({ text, of: [index] }));
}

/** Neighbours that are the two sides of one pair share a text: `CH1 +-`. */
export function mergedPairs(names: readonly string[]): MergedName[] {
  const merged: MergedName[] = [];
  for (let index = 0; index < names.length; index += 1) {
    const [name = '', next = ''] = [names[index], names[index + 1]];
    const pair = [name.slice(-1), next.slice(-1)].sort().join('');
    const isPair = pair === '+-' && name.slice(0, -1) === next.slice(0, -1);
    if (isPair)
      merged.push({
        text: `${name.slice(0, -1)} ${name.slice(-1)}${next.slice(-1)}`,
        of: [index, index + 1],
      });
    else merged.push({ text: name, of: [index] });
    if (isPair) index += 1;
  }
  return merged;
}

/** Neighbours whose names count up or down share a text, pairs included: `IN1…4`. */
export function mergedRuns(names: readonly string[]): MergedName[] {
  const pairs = mergedPairs(names);
  const runs: MergedName[][] = [];
  for (const pair of pairs) {
    const before = runs.at(-1);
    const last = before?.at(-1);
    if (before && last && follows(names, last, pair, before.length > 1 ? before.at(-2) : undefined))
      before.push(pair);
    else runs.push([pair]);
  }
  return runs.flatMap((run) => {
    const [first] = run;
    const last = run.at(-1);
    if (!first || !last || run.length < 3) return run;
    // Stem and sign are said once, and the figures in the order in which they stand: `HL1…4 +-`.
    const [from, to] = [parsed(names, first), parsed(names, last)];
    const sign = / [+-]+$/.exec(last.text)?.[0] ?? to.sign;
    return [{ text: `${from.stem}${from.number}…${to.number}${sign}`, of: run.flatMap(({ of }) => of) }];
  });
}

/** So many neighbours share a text, told one after the other: `S6, S8, S10`. Runs stay as they are. */
export function inGroupsOf(size: number): (names: readonly string[]) => MergedName[] {
  return (names) => {
    const runs = mergedRuns(names);
    return Array.from({ length: Math.ceil(runs.length / size) }, (_, nth) => {
      const group = runs.slice(nth * size, (nth + 1) * size);
      return { text: group.map(({ text }) => text).join(', '), of: group.flatMap(({ of }) => of) };
    });
  };
}

/** True where a name counts on from the one before, in the same direction as the run so far. */
function follows(
  names: readonly string[],
  a: MergedName,
  b: MergedName,
  before: MergedName | undefined,
): boolean {
  const [first, second] = [parsed(names, a), parsed(names, b)];
  if (first.number === null || second.number === null || first.stem !== second.stem) return false;
  if (a.of.length !== b.of.length || first.sign !== second.sign) return false;
  const step = second.number - first.number;
  if (before === undefined) return Math.abs(step) === 1;
  return step === first.number - (parsed(names, before).number ?? Number.NaN);
}

function parsed(names: readonly string[], { of }: MergedName): Parsed {
  return parse(names[of[0] ?? 0] ?? '');
}

/** Labels of the wires of one route in few words: `L1 +-`, `S5, S6`, `S1…4 +-`. */
export function labelsText(labels: readonly string[]): string {
  return mergedRuns(labels.filter((label) => label !== ''))
    .map(({ text }) => text)
    .join(', ');
}
