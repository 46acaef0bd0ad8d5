import { seeded } from '../../../board/random.ts';
import { shuffled } from '../../../board/route/relaying.ts';

/** Where a wire ends: at a part or outside the board, and how far round that, counter-clockwise about itself. */
export interface Berth {
  readonly disc: string;
  /** Ends at one place may follow each other in any order. */
  readonly place: number;
}

/** A wire by its two ends. */
export type Berthed = readonly [Berth, Berth];

/** Wires that are looked at together, at most. */
const mostTogether = 4;
/** Orders in which sets of wires are taken, of which the best counts. */
const draws = 200;

/**
 * A number of crossings that no way of laying wires comes below, wherever their parts stand, so long as the order of ends
 * round each part and round the board stays.
 *
 * Proof. Parts, and the room outside the board, are discs on a sphere. Shrunk to points, they are the nodes of a graph
 * whose edges, the wires, leave each node in a fixed cyclic order. Were the wires of a set laid without a crossing, the
 * faces traced along these orders would give nodes - edges + faces = 2 in each connected piece (Euler 1758). So a set
 * for which no order of ends at one place gives that has two wires that cross. Sets no two of which share a pair of wires
 * have their crossings in different pairs: there are as many crossings at least as such sets. Sets of up to four wires
 * are looked at, and taken by size, in the best of some orders drawn by lot.
 */
export function leastCrossings(wires: readonly Berthed[]): number {
  const found: number[][] = [];
  for (let size = 2; size <= mostTogether; size += 1)
    for (const set of setsOf(wires.length, size)) {
      if (found.some((known) => known.every((at) => set.includes(at)))) continue;
      if (!canLieApart(set.flatMap((at) => (wires[at] ? [wires[at]] : [])))) found.push(set);
    }
  const random = seeded(1);
  const counts = Array.from({ length: draws }, () => {
    const sets = shuffled(found, random).toSorted((a, b) => a.length - b.length);
    return withoutCommonPair(sets, wires.length);
  });
  return Math.max(0, ...counts);
}

/** Every set of so many of the first numbers. */
function* setsOf(count: number, size: number, from = 0): Generator<number[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let at = from; at <= count - size; at += 1)
    for (const rest of setsOf(count, size - 1, at + 1)) yield [at, ...rest];
}

/** How many sets are taken, in their order, where one that shares a pair with one before is left out. */
function withoutCommonPair(sets: readonly (readonly number[])[], wires: number): number {
  const taken = new Set<number>();
  let count = 0;
  for (const set of sets) {
    const pairs = set.flatMap((a, at) => set.slice(at + 1).map((b) => a * wires + b));
    if (pairs.some((pair) => taken.has(pair))) continue;
    for (const pair of pairs) taken.add(pair);
    count += 1;
  }
  return count;
}

/** An end of a wire: twice the number of the wire, and one more at its second end. */
type End = number;

/** True where wires lie without a crossing by some order of the ends at one place. */
function canLieApart(wires: readonly Berthed[]): boolean {
  const byDisc = new Map<string, Map<number, End[]>>();
  for (const [at, ends] of wires.entries())
    for (const [side, { disc, place }] of ends.entries()) {
      const places = byDisc.get(disc) ?? new Map<number, End[]>();
      byDisc.set(disc, places.set(place, [...(places.get(place) ?? []), 2 * at + side]));
    }
  const discs = [...byDisc.values()].map((places) =>
    [...places].toSorted(([a], [b]) => a - b).map(([, ends]) => ordersOf(ends)),
  );
  const pieces = piecesOf(wires);
  return [...roundsOf(discs)].some(
    (next) => byDisc.size - wires.length + facesOf(next, 2 * wires.length) === 2 * pieces,
  );
}

/** Every order of some ends. */
function ordersOf(ends: readonly End[]): End[][] {
  if (ends.length < 2) return [[...ends]];
  return ends.flatMap((end) => ordersOf(ends.filter((one) => one !== end)).map((rest) => [end, ...rest]));
}

/** Every way in which the ends of all discs follow each other: by end, the next one round its disc. */
function* roundsOf(discs: readonly (readonly End[][][])[], before: readonly End[][] = []): Generator<End[]> {
  const places = discs[before.length];
  if (!places) {
    const next: End[] = [];
    for (const round of before)
      for (const [at, end] of round.entries()) next[end] = round[(at + 1) % round.length] ?? end;
    yield next;
    return;
  }
  const rounds = places.reduce<End[][]>(
    (all, orders) => all.flatMap((round) => orders.map((order) => [...round, ...order])),
    [[]],
  );
  for (const round of rounds) yield* roundsOf(discs, [...before, round]);
}

/** Faces of a graph: from an end along its wire, then on with the next end round that disc, until the first comes again. */
function facesOf(next: readonly End[], ends: number): number {
  const seen = new Set<End>();
  let count = 0;
  for (let begin = 0; begin < ends; begin += 1) {
    if (seen.has(begin)) continue;
    count += 1;
    for (let end = begin; !seen.has(end); end = next[end ^ 1] ?? begin) seen.add(end);
  }
  return count;
}

/** Connected pieces of the graph of wires. */
function piecesOf(wires: readonly Berthed[]): number {
  const pieces: Set<string>[] = [];
  for (const [{ disc: a }, { disc: b }] of wires) {
    const joined = pieces.filter((piece) => piece.has(a) || piece.has(b));
    for (const piece of joined) pieces.splice(pieces.indexOf(piece), 1);
    pieces.push(new Set([a, b, ...joined.flatMap((piece) => [...piece])]));
  }
  return pieces.length;
}
