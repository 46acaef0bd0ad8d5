import { listed } from '../../../model/printed/listed.ts';
import { flowText } from '../../../read/yaml/write-value.ts';
import type { Answers } from '../ask/question.ts';
import type { Row } from '../ask/rows.ts';
import { rowsOf, spaceIds } from './vehicle-rows.ts';
import { wayOf } from './ways.ts';

/** One way as it is told from one of its ends. */
interface Told {
  readonly id: string;
  /** What it ends at there: a name of the vehicle, or an edge of a space. */
  readonly end: string;
  /** Its stretches from there on, as a file has them. */
  readonly passes: readonly string[];
}

/** From how many stretches on it is told that two ways have them alike: the first may well be so by chance. */
const fromAlike = 2;

/** What is told of ways that have stretches from one end on in common: they need be told once. */
export function sharedStretches(answers: Answers): readonly string[] {
  const ways = rowsOf(answers, 'way').map((row) => fromBothEnds(row, spaceIds(answers)));
  return ways.flatMap((one, at) =>
    ways.slice(at + 1).flatMap((other) => {
      const shared = one.flatMap((a) => other.flatMap((b) => alike(a, b) ?? []));
      const [most] = shared.toSorted((a, b) => b.passes.length - a.passes.length);
      return most ? [textOf(most)] : [];
    }),
  );
}

interface Shared {
  readonly ways: readonly [string, string];
  readonly end: string;
  readonly passes: readonly string[];
}

/** What two ways have alike from one end that they share; null where that is little, or all of one of them. */
function alike(a: Told, b: Told): Shared | null {
  if (a.end !== b.end) return null;
  const differs = a.passes.findIndex((pass, at) => pass !== b.passes[at]);
  const count = differs < 0 ? a.passes.length : differs;
  if (count < fromAlike || count >= Math.min(a.passes.length, b.passes.length)) return null;
  return { ways: [a.id, b.id], end: a.end, passes: a.passes.slice(0, count) };
}

function textOf({ ways, end, passes }: Shared): string {
  return `${listed(ways)} have ${listed(passes)} alike from ${end} on: a way that ends in a place where they part, and one of each from there on, tell them once`;
}

/** A way from either of its ends. */
function fromBothEnds(row: Row, spaces: readonly string[]): readonly Told[] {
  const read = wayOf(row, spaces);
  if (typeof read === 'string') return [];
  const passes = Array.isArray(read.way.passes) ? read.way.passes.map((pass) => flowText(pass)) : [];
  const { from, to } = row.cells;
  return [
    { id: read.id, end: endName(String(from)), passes },
    { id: read.id, end: endName(String(to)), passes: passes.toReversed() },
  ];
}

/** Of several names at an end the first; an edge of a space is one name. */
function endName(written: string): string {
  const [first = '', ...others] = written.trim().split(/\s+/);
  return others.at(-1) === 'edge' ? written.trim() : first;
}
