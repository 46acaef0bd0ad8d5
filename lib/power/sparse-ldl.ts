/** A symmetric sparse matrix, ready to be factorised again and again with other numbers in the same places. */
export interface SymbolicLdl {
  readonly size: number;
  /** Number of slots; those of the diagonal come first, row by row. */
  readonly slots: number;
  /** Slot of each announced pair. */
  readonly pairSlots: readonly number[];
  /** Rows in the order in which they are eliminated. */
  readonly order: Int32Array;
  /** For each pivot in order: where its entries start in `rows` and `rowSlots`. */
  readonly starts: Int32Array;
  readonly rows: readonly number[];
  readonly rowSlots: readonly number[];
  /** Slots hit by the elimination, pivot by pivot and pair by pair of its entries. */
  readonly updates: readonly number[];
}

/** The graph of a matrix while it is eliminated: for each row its neighbours and the slots of their entries. */
class Pattern {
  readonly near: number[][];
  readonly nearSlots: number[][];
  readonly degree: Int32Array;
  slots: number;

  constructor(size: number) {
    this.near = Array.from({ length: size }, () => []);
    this.nearSlots = Array.from({ length: size }, () => []);
    this.degree = new Int32Array(size);
    this.slots = size;
  }

  /** The slot of (i, j), made where there is none yet. Rows are short, so a plain search is fastest. */
  join(i: number, j: number): number {
    if (i === j) return i;
    const known = this.near[i]?.indexOf(j) ?? -1;
    if (known >= 0) return this.nearSlots[i]?.[known] ?? -1;
    this.#add(i, j);
    this.#add(j, i);
    this.slots += 1;
    return this.slots - 1;
  }

  #add(row: number, other: number): void {
    this.near[row]?.push(other);
    this.nearSlots[row]?.push(this.slots);
    this.degree[row] = (this.degree[row] ?? 0) + 1;
  }
}

/**
 * Chooses the order of elimination (least degree first: no fill-in on a tree) and lists once all products
 * that the factorisation will take. `pairs` are the index pairs off the diagonal that may be other than zero.
 */
export function symbolicLdl(size: number, pairs: readonly (readonly [number, number])[]): SymbolicLdl {
  const pattern = new Pattern(size);
  const pairSlots = pairs.map(([i, j]) => pattern.join(i, j));
  const gone = new Uint8Array(size);
  const order = new Int32Array(size);
  const starts = new Int32Array(size + 1);
  const rows: number[] = [];
  const rowSlots: number[] = [];
  const updates: number[] = [];
  for (let k = 0; k < size; k += 1) {
    const pivot = leastDegree(pattern.degree, gone);
    gone[pivot] = 1;
    order[k] = pivot;
    const start = rows.length;
    pattern.near[pivot]?.forEach((i, at) => {
      if (gone[i]) return;
      rows.push(i);
      rowSlots.push(pattern.nearSlots[pivot]?.[at] ?? 0);
      pattern.degree[i] = (pattern.degree[i] ?? 0) - 1;
    });
    for (let a = start; a < rows.length; a += 1)
      for (let b = start; b <= a; b += 1) updates.push(pattern.join(rows[a] ?? 0, rows[b] ?? 0));
    starts[k + 1] = rows.length;
  }
  return { size, slots: pattern.slots, pairSlots, order, starts, rows, rowSlots, updates };
}

function leastDegree(degree: Int32Array, gone: Uint8Array): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < degree.length && least > 1; i += 1) {
    const own = degree[i] ?? 0;
    if (gone[i] || own >= least) continue;
    best = i;
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
  const { size, order, starts, rowSlots, updates } = symbolic;
  const floors = new Float64Array(size);
  for (let i = 0; i < size; i += 1) floors[i] = pivotFloor * Math.abs(values[i] ?? 0);
  let update = 0;
  for (let k = 0; k < size; k += 1) {
    const row = order[k] ?? 0;
    const pivot = values[row] ?? 0;
    if (!(pivot > (floors[row] ?? 0))) return false;
    const start = starts[k] ?? 0;
    const end = starts[k + 1] ?? start;
    for (let a = start; a < end; a += 1) {
      const factor = (values[rowSlots[a] ?? 0] ?? 0) / pivot;
      for (let b = start; b <= a; b += 1) {
        const target = updates[update] ?? 0;
        update += 1;
        values[target] = (values[target] ?? 0) - factor * (values[rowSlots[b] ?? 0] ?? 0);
      }
    }
  }
  return true;
}

/** Solves L D L^T x = right in place of `right`, with `values` as `factorise` left them. */
export function substitute(symbolic: SymbolicLdl, values: Float64Array, right: Float64Array): void {
  const { order, starts, rows, rowSlots } = symbolic;
  for (let k = 0; k < symbolic.size; k += 1) {
    const row = order[k] ?? 0;
    const scaled = (right[row] ?? 0) / (values[row] ?? 1);
    const end = starts[k + 1] ?? 0;
    for (let a = starts[k] ?? 0; a < end; a += 1) {
      const other = rows[a] ?? 0;
      right[other] = (right[other] ?? 0) - (values[rowSlots[a] ?? 0] ?? 0) * scaled;
    }
  }
  for (let k = symbolic.size - 1; k >= 0; k -= 1) {
    const row = order[k] ?? 0;
    let sum = right[row] ?? 0;
    const end = starts[k + 1] ?? 0;
    for (let a = starts[k] ?? 0; a < end; a += 1)
      sum -= (values[rowSlots[a] ?? 0] ?? 0) * (right[rows[a] ?? 0] ?? 0);
    right[row] = sum / (values[row] ?? 1);
  }
}
