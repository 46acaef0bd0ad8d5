import { WholeRoom } from './scratch-arrays.ts';
import type { SymbolicLdl } from './sparse-ldl.ts';

const [firstRoom, degreeRoom, neighbourRoom, nextRoom] = [
  new WholeRoom(),
  new WholeRoom(),
  new WholeRoom(),
  new WholeRoom(),
];

/**
 * Which entries of a symmetric matrix may be other than zero, kept as the graph of its rows: each row has a chain of
 * entries, one to each neighbour. Entries come in twos, one in each of the two chains, and share a slot.
 */
export class LdlPattern {
  readonly size: number;
  entries = 0;
  /** The entry at which the chain of each row starts; -1 where there is none. */
  readonly first: number[];
  /** Neighbours of each row that are not eliminated yet. */
  readonly degree: number[];
  /** By entry: its row's neighbour, and the next entry of the chain. */
  neighbour: number[];
  next: number[];

  /** A pattern of `size` rows with no entries yet; `likely` of them are made room for at once. */
  constructor(size: number, likely: number) {
    this.size = size;
    this.first = firstRoom.of(size).fill(-1, 0, size);
    this.degree = degreeRoom.of(size).fill(0, 0, size);
    this.neighbour = neighbourRoom.of(likely);
    this.next = nextRoom.of(likely);
  }

  get slots(): number {
    return this.size + 1 + this.entries / 2;
  }

  slotOf(entry: number): number {
    return this.size + 1 + (entry >> 1);
  }

  /**
   * The slot of (i, j), made where there is none yet; `size`, which nobody reads, where one of them is the row past
   * the last. Chains are short, so a plain search is fastest.
   */
  join(i: number, j: number): number {
    if (i === this.size || j === this.size) return this.size;
    const { neighbour, next } = this;
    for (let entry = this.first[i] ?? -1; entry >= 0; entry = next[entry] ?? -1)
      if (neighbour[entry] === j) return this.slotOf(entry);
    if (this.entries + 2 > neighbour.length) {
      this.neighbour = neighbourRoom.of(this.entries + 2);
      this.next = nextRoom.of(this.entries + 2);
    }
    this.#add(j, i);
    this.#add(i, j);
    return this.slotOf(this.entries - 1);
  }

  #add(row: number, other: number): void {
    const entry = this.entries;
    this.neighbour[entry] = other;
    this.next[entry] = this.first[row] ?? -1;
    this.first[row] = entry;
    this.degree[row] = (this.degree[row] ?? 0) + 1;
    this.entries = entry + 1;
  }
}

const [goneRoom, orderRoom, endsRoom, openRoom] = [
  new WholeRoom(),
  new WholeRoom(),
  new WholeRoom(),
  new WholeRoom(),
];
const [rowsRoom, rowSlotsRoom, updatesRoom] = [new WholeRoom(), new WholeRoom(), new WholeRoom()];

/** The order of elimination as it grows. */
interface Elimination {
  readonly pattern: LdlPattern;
  /** 1 for a row that is eliminated. */
  readonly gone: number[];
  readonly order: number[];
}

/**
 * Chooses the order of elimination and lists once all products that it will take: first the tips, rows with one
 * neighbour, and each that goes may make another, so that a tree needs nothing else; then rows of least degree. The
 * pattern is used up.
 */
export function symbolicLdl(pattern: LdlPattern): SymbolicLdl {
  const { size } = pattern;
  const gone = goneRoom.of(size).fill(0, 0, size);
  const order = orderRoom.of(size);
  const ends = endsRoom.of(size);
  const elimination = { pattern, gone, order };
  const tips = eliminateTips(elimination);
  let end = tips;
  let products = 0;
  for (let k = tips; k < size; k += 1) {
    const pivot = leastDegree(pattern, gone);
    order[k] = pivot;
    const start = end;
    end = eliminate(elimination, pivot, start);
    ends[k] = end;
    products = joinNeighbours(pattern, start, end, products);
  }
  const rows = rowsRoom.of(end);
  const rowSlots = rowSlotsRoom.of(end);
  const updates = updatesRoom.of(products);
  return { size, slots: pattern.slots, order, tips, ends, rows, rowSlots, updates };
}

/** Takes row after row with one neighbour left; their number. A row that is left alone stays for later. */
function eliminateTips({ pattern, gone, order }: Elimination): number {
  const { size, degree, first, neighbour, next } = pattern;
  const rows = rowsRoom.of(size);
  const rowSlots = rowSlotsRoom.of(size);
  const open = openRoom.of(size);
  let waiting = 0;
  for (let row = 0; row < size; row += 1) if (degree[row] === 1) open[waiting++] = row;
  let count = 0;
  // First come, first served: neighbours in the order then seldom wait for each other's division.
  for (let at = 0; at < waiting; at += 1) {
    const tip = open[at] ?? 0;
    if (degree[tip] !== 1) continue;
    let entry = first[tip] ?? -1;
    while (gone[neighbour[entry] ?? 0] === 1) entry = next[entry] ?? -1;
    const row = neighbour[entry] ?? 0;
    const left = (degree[row] ?? 0) - 1;
    degree[row] = left;
    if (left === 1) open[waiting++] = row;
    gone[tip] = 1;
    order[count] = tip;
    rows[count] = row;
    rowSlots[count] = pattern.slotOf(entry);
    count += 1;
  }
  return count;
}

/** Takes a row out, listing its entries from `start` on; where they end. */
function eliminate({ pattern, gone }: Elimination, pivot: number, start: number): number {
  const { degree, first, neighbour, next } = pattern;
  const most = start + (degree[pivot] ?? 0);
  const rows = rowsRoom.of(most);
  const rowSlots = rowSlotsRoom.of(most);
  gone[pivot] = 1;
  let end = start;
  for (let entry = first[pivot] ?? -1; entry >= 0; entry = next[entry] ?? -1) {
    const row = neighbour[entry] ?? 0;
    if (gone[row] === 1) continue;
    rows[end] = row;
    rowSlots[end] = pattern.slotOf(entry);
    degree[row] = (degree[row] ?? 0) - 1;
    end += 1;
  }
  return end;
}

/** Joins the rows from `start` to `end` with one another, listing the slots from `first` on; where these end. */
function joinNeighbours(pattern: LdlPattern, start: number, end: number, first: number): number {
  const rows = rowsRoom.of(end);
  const count = end - start;
  const updates = updatesRoom.of(first + (count * (count + 1)) / 2);
  let product = first;
  for (let a = start; a < end; a += 1) {
    const row = rows[a] ?? 0;
    for (let b = start; b < a; b += 1) updates[product++] = pattern.join(row, rows[b] ?? 0);
    updates[product++] = row;
  }
  return product;
}

function leastDegree({ size, degree }: LdlPattern, gone: number[]): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let row = 0; row < size; row += 1) {
    const own = degree[row] ?? 0;
    if (gone[row] === 1 || own >= least) continue;
    best = row;
    least = own;
  }
  return best;
}
