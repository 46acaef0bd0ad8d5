import { type Carried, carriedSchema, type SignalPair } from '../vocabulary.ts';

type Side = 'left' | 'right';

/** What the name of an output or an input tells of what it carries; null where it tells nothing of it. */
export interface Told {
  readonly pair: SignalPair | null;
  readonly side: Side | null;
}

const rowWords: Readonly<Record<string, SignalPair>> = {
  F: 'front',
  FRONT: 'front',
  FRT: 'front',
  REAR: 'rear',
  SUB: 'bass',
  SUBWOOFER: 'bass',
  SW: 'bass',
  WOOFER: 'bass',
  BASS: 'bass',
};
const sideWords: Readonly<Record<string, Side>> = { L: 'left', LEFT: 'left', R: 'right', RIGHT: 'right' };
const rowFirst = /^(FRONT|REAR|SUB|SW|BASS|F|R)(LEFT|RIGHT|L|R)$/;
const sideFirst = /^(LEFT|RIGHT|L|R)(FRONT|REAR|SUB|SW|BASS|F|R)$/;

const rowOfWord = (word: string): SignalPair | null => (word === 'R' ? 'rear' : (rowWords[word] ?? null));

/** One word of a name: `FL`, `LF`, `FRONT`, `L`. */
function toldByWord(word: string): Told | null {
  const [, row, side] = rowFirst.exec(word) ?? [];
  if (row && side) return { pair: rowOfWord(row), side: sideWords[side] ?? null };
  const [, first, last] = sideFirst.exec(word) ?? [];
  if (first && last) return { pair: rowOfWord(last), side: sideWords[first] ?? null };
  const pair = rowWords[word] ?? null;
  const alone = sideWords[word] ?? null;
  return pair === null && alone === null ? null : { pair, side: alone };
}

/**
 * What a name tells, as outputs are marked in the trade: row and side by letter or word in either order, `FL`, `LF`,
 * `RR`, `FRONT-L`, `OUT-RL`, `SW`. An `R` beside a side is the rear; `FR` and `RR` beside one are rows. Common practice.
 */
export function toldBy(name: string): Told | null {
  const words = name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toUpperCase()
    .split(/[^A-Z]+/)
    .filter((word) => toldByWord(word) !== null);
  const [first, second, third] = words;
  if (first === undefined || third !== undefined) return null;
  if (second === undefined) return toldByWord(first);
  const side = sideWords[second];
  if (side && (first === 'FR' || first === 'RR')) return { pair: first === 'FR' ? 'front' : 'rear', side };
  return toldByWord(rowFirst.test(first + second) || sideFirst.test(first + second) ? first + second : '');
}

/**
 * What the names of the outputs of one form, or of the inputs, tell that each carries, in the order of the part: the row
 * and the side in a name; a side alone is of the next pair that is free for it; a bass output without a side is the next
 * of the two. A name that tells nothing, or the same as one before it, has no entry.
 */
export function carriedByName(names: readonly string[]): ReadonlyMap<string, Carried> {
  const found = new Map<string, Carried>();
  const taken = new Set<Carried>();
  const told = names.map((name) => ({ name, ...(toldBy(name) ?? { pair: null, side: null }) }));
  const take = (wanted: (pair: SignalPair | null, side: Side | null) => boolean) => {
    for (const { name, pair, side } of told) {
      if (!wanted(pair, side)) continue;
      const carries = carriedSchema.options.find(
        (one) =>
          !taken.has(one) && (pair === null || one.startsWith(pair)) && (side === null || one.endsWith(side)),
      );
      if (carries === undefined) continue;
      found.set(name, carries);
      taken.add(carries);
    }
  };
  take((pair, side) => pair !== null && side !== null);
  take((pair, side) => pair === 'bass' && side === null);
  take((pair, side) => pair === null && side !== null);
  return found;
}

/**
 * What each output of one form carries: as it is written, else as its name tells, else by its number among those that
 * nothing tells of.
 */
export function carriedBy(
  names: readonly string[],
  written: (name: string) => Carried | undefined,
): ReadonlyMap<string, Carried> {
  const named = carriedByName(names);
  const found = new Map<string, Carried>();
  const isTaken = (carries: Carried) => [...found.values()].includes(carries);
  for (const name of names) {
    const carries = written(name);
    if (carries) found.set(name, carries);
  }
  for (const [name, carries] of named) if (!found.has(name) && !isTaken(carries)) found.set(name, carries);
  const isOrdered = named.size === 0;
  for (const [at, name] of names.entries()) {
    if (found.has(name)) continue;
    const carries = isOrdered
      ? carriedSchema.options[at]
      : carriedSchema.options.find((one) => !isTaken(one));
    if (carries !== undefined) found.set(name, carries);
  }
  return found;
}
