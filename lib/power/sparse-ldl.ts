/** A symmetric sparse matrix, ready to be factorised again and again with other numbers in the same places. */
export interface SymbolicLdl {
  readonly size: number;
  /** Number of slots; those of the diagonal come first, row by row. */
  readonly slots: number;
  /** Rows in the order in which they are eliminated. */
  readonly order: readonly number[];
  /** For each pivot in order: where its entries end in `rows` and `rowSlots`; they start where the last one's ended. */
  readonly ends: readonly number[];
  readonly rows: readonly number[];
  readonly rowSlots: readonly number[];
  /** Slots hit by the elimination, pivot by pivot and pair by pair of its entries. */
  readonly updates: readonly number[];
  /** Room for what each pivot must be above. */
  readonly floors: Float64Array;
}

/**
 * Which entries of a symmetric matrix may be other than zero, kept as the graph of its rows: each row has a chain of
 * entries, one to each neighbour. Entries come in twos, one in each of the two chains, and share a slot.
 */
export class LdlPattern {
  readonly size: number;
  /** The entry at which the chain of each row starts; -1 where there is none. */
  readonly first: number[] = [];
  /** Neighbours of each row that are not eliminated yet. */
  readonly degree: number[] = [];
  /** By entry: its row's neighbour, and the next entry of the chain. */
  readonly neighbour: number[] = [];
  readonly next: number[] = [];

  constructor(size: number) {
    this.size = size;
    for (let row = 0; row < size; row += 1) {
      this.first.push(-1);
      this.degree.push(0);
    }
  }

  get slots(): number {
    return this.size + this.neighbour.length / 2;
  }

  slotOf(entry: number): number {
    return this.size + (entry >> 1);
  }

  /** The slot of (i, j), made where there is none yet. Chains are short, so a plain search is fastest. */
  join(i: number, j: number): number {
    if (i === j) return i;
    for (let entry = this.first[i] ?? -1; entry >= 0; entry = this.next[entry] ?? -1)
      if (this.neighbour[entry] === j) return this.slotOf(entry);
    this.#add(j, i);
    this.#add(i, j);
    return this.slots - 1;
  }

  #add(row: number, other: number): void {
    this.next.push(this.first[row] ?? -1);
    this.neighbour.push(other);
    this.first[row] = this.neighbour.length - 1;
    this.degree[row] = (this.degree[row] ?? 0) + 1;
  }
}

/**
 * Chooses the order of elimination (least degree first: no fill-in on a tree) and lists once all products
 * that the factorisation will take. The pattern is used up.
 */
export function symbolicLdl(pattern: LdlPattern): SymbolicLdl {
  const { size, degree, first, neighbour, next } = pattern;
  const gone = new Uint8Array(size);
  const order: number[] = [];
  const ends: number[] = [];
  const rows: number[] = [];
  const rowSlots: number[] = [];
  const updates: number[] = [];
  const tips = tipsOf(degree);
  while (order.length < size) {
    const pivot = tips.pop() ?? leastDegree(degree, gone);
    if (gone[pivot] === 1) continue;
    gone[pivot] = 1;
    order.push(pivot);
    const start = rows.length;
    for (let entry = first[pivot] ?? -1; entry >= 0; entry = next[entry] ?? -1) {
      const row = neighbour[entry] ?? 0;
      if (gone[row] === 1) continue;
      rows.push(row);
      rowSlots.push(pattern.slotOf(entry));
      degree[row] = (degree[row] ?? 0) - 1;
    }
    for (let a = start; a < rows.length; a += 1) {
      const row = rows[a] ?? 0;
      for (let b = start; b < a; b += 1) updates.push(pattern.join(row, rows[b] ?? 0));
      updates.push(row);
    }
    for (let a = start; a < rows.length; a += 1) {
      const row = rows[a] ?? 0;
      if ((degree[row] ?? 0) <= 1) tips.push(row);
    }
    ends.push(rows.length);
  }
  const floors = new Float64Array(size);
  return { size, slots: pattern.slots, order, ends, rows, rowSlots, updates, floors };
}

/** Rows with one neighbour or none: they go first, and each that goes may make another. */
function tipsOf(degree: readonly number[]): number[] {
  const tips: number[] = [];
  for (let row = 0; row < degree.length; row += 1) if ((degree[row] ?? 0) <= 1) tips.push(row);
  return tips;
}

function leastDegree(degree: readonly number[], gone: Uint8Array): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let row = 0; row < degree.length; row += 1) {
    const own = degree[row] ?? 0;
    if (gone[row] === 1 || own >= least) continue;
    best = row;
    least = own;
  }
  return best;
}

/** Pivots at or under this share of their own diagonal entry count as zero. */
const pivotFloor = 1e-13;

/**
 * Factorises `values` in place as L D L^T. False unless the matrix is positive definite (some pivot is not
 * above zero): no pivoting is then needed, and definiteness is what the caller wants to know.
 */
export function factorise(symbolic: SymbolicLdl, values: Float64Array): boolean {
  const { size, order, ends, rowSlots, updates, floors } = symbolic;
  for (let row = 0; row < size; row += 1) floors[row] = pivotFloor * Math.abs(values[row] ?? 0);
  let update = 0;
  let start = 0;
  for (let k = 0; k < size; k += 1) {
    const row = order[k] ?? 0;
    const pivot = values[row] ?? 0;
    if (!(pivot > (floors[row] ?? 0))) return false;
    const end = ends[k] ?? start;
    for (let a = start; a < end; a += 1) {
      const factor = (values[rowSlots[a] ?? 0] ?? 0) / pivot;
      for (let b = start; b <= a; b += 1) {
        const target = updates[update] ?? 0;
        update += 1;
        values[target] = (values[target] ?? 0) - factor * (values[rowSlots[b] ?? 0] ?? 0);
      }
    }
    start = end;
  }
  return true;
}

/** Solves L D L^T x = right in place of `right`, with `values` as `factorise` left them. */
export function substitute(symbolic: SymbolicLdl, values: Float64Array, right: Float64Array): void {
  const { size, order, ends, rows, rowSlots } = symbolic;
  let at = 0;
  for (let k = 0; k < size; k += 1) {
    const row = order[k] ?? 0;
    const scaled = (right[row] ?? 0) / (values[row] ?? 1);
    for (const end = ends[k] ?? 0; at < end; at += 1) {
      const other = rows[at] ?? 0;
      right[other] = (right[other] ?? 0) - (values[rowSlots[at] ?? 0] ?? 0) * scaled;
    }
  }
  for (let k = size - 1; k >= 0; k -= 1) {
    const row = order[k] ?? 0;
    let sum = right[row] ?? 0;
    for (const start = k === 0 ? 0 : (ends[k - 1] ?? 0); at > start; at -= 1)
      sum -= (values[rowSlots[at - 1] ?? 0] ?? 0) * (right[rows[at - 1] ?? 0] ?? 0);
    right[row] = sum / (values[row] ?? 1);
  }
}
