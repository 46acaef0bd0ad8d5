import type { Cell } from '../ask/rows.ts';

/** `B+ GND` is written as a row of names, `B+, GND`, and names that count up or down as their range. */
export function rowName(names: Cell | undefined): string {
  const list = String(names).split(/\s+/);
  return counted(list) ?? list.join(', ');
}

/** The range of names that differ by one from each to the next; null for other names. */
function counted(names: readonly string[]): string | null {
  const read = names.map((name) => /^(\D*)(\d+)$/.exec(name));
  const [first, second] = read.map((one) => Number(one?.[2]));
  if (first === undefined || second === undefined || Math.abs(second - first) !== 1) return null;
  const isRow = read.every(
    (one, at) => one?.[1] === read[0]?.[1] && Number(one?.[2]) === first + at * (second - first),
  );
  return isRow ? `${names[0]}..${read.at(-1)?.[2]}` : null;
}
