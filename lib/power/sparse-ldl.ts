/** A symmetric sparse matrix, ready to be factorised again and again with other numbers in the same places. */
export interface SymbolicLdl {
  readonly size: number;
  /** Slot of the diagonal entry of each row. */
  readonly diagonal: Int32Array;
  /** Slot of the entry (i, j), i and j in any order; the pair must have been announced. */
  slot(i: number, j: number): number;
  readonly slots: number;
  /** Rows in the order in which they are eliminated. */
  readonly order: Int32Array;
  /** For each pivot in order: where its entries start in `rows` and `rowSlots`. */
  readonly starts: Int32Array;
  readonly rows: Int32Array;
  readonly rowSlots: Int32Array;
  /** For each pivot in order: where its updates start in `updates`. Slots hit, pair by pair of its entries. */
  readonly updateStarts: Int32Array;
  readonly updates: Int32Array;
}

/**
 * Chooses the order of elimination (least degree first: no fill-in on a tree) and lists once all products
 * that the factorisation will take. `pairs` are the index pairs off the diagonal that may be other than zero.
 */
export function symbolicLdl(size: number, pairs: readonly (readonly [number, number])[]): SymbolicLdl {
  const near: Set<number>[] = Array.from({ length: size }, () => new Set<number>());
  for (const [i, j] of pairs) {
    if (i === j) continue;
    near[i]?.add(j);
    near[j]?.add(i);
  }
  const slotOf = new Map<number, number>();
  const key = (i: number, j: number) => (i < j ? i * size + j : j * size + i);
  const slot = (i: number, j: number): number => {
    const known = slotOf.get(key(i, j));
    if (known !== undefined) return known;
    slotOf.set(key(i, j), slotOf.size);
    return slotOf.size - 1;
  };
  const diagonal = Int32Array.from({ length: size }, (_, i) => slot(i, i));
  const order: number[] = [];
  const starts = [0];
  const rows: number[] = [];
  const rowSlots: number[] = [];
  const updateStarts = [0];
  const updates: number[] = [];
  const left = new Set(near.keys());
  while (left.size > 0) {
    const pivot = leastDegree(left, near);
    left.delete(pivot);
    order.push(pivot);
    const neighbours = [...(near[pivot] ?? [])];
    for (const i of neighbours) {
      rows.push(i);
      rowSlots.push(slot(pivot, i));
    }
    eliminate(pivot, neighbours, near, (i, j) => updates.push(slot(i, j)));
    starts.push(rows.length);
    updateStarts.push(updates.length);
  }
  return {
    size,
    diagonal,
    slot,
    slots: slotOf.size,
    order: Int32Array.from(order),
    starts: Int32Array.from(starts),
    rows: Int32Array.from(rows),
    rowSlots: Int32Array.from(rowSlots),
    updateStarts: Int32Array.from(updateStarts),
    updates: Int32Array.from(updates),
  };
}

function leastDegree(left: ReadonlySet<number>, near: readonly ReadonlySet<number>[]): number {
  let best = -1;
  let degree = Number.POSITIVE_INFINITY;
  for (const i of left) {
    const own = near[i]?.size ?? 0;
    if (own >= degree) continue;
    best = i;
    degree = own;
    if (own <= 1) break;
  }
  return best;
}

/** Takes the pivot out of the graph and joins its neighbours; tells each pair that the elimination touches. */
function eliminate(
  pivot: number,
  neighbours: readonly number[],
  near: readonly Set<number>[],
  touch: (i: number, j: number) => void,
): void {
  for (const [at, i] of neighbours.entries()) {
    near[i]?.delete(pivot);
    for (let other = 0; other <= at; other += 1) {
      const j = neighbours[other] ?? i;
      if (i !== j) {
        near[i]?.add(j);
        near[j]?.add(i);
      }
      touch(i, j);
    }
  }
}

/** Pivots at or under this share of their own diagonal entry count as zero. */
const pivotFloor = 1e-13;

/**
 * Factorises `values` in place as L D L^T. False unless the matrix is positive definite (some pivot is not
 * above zero): no pivoting is then needed, and definiteness is what the caller wants to know.
 */
export function factorise(symbolic: SymbolicLdl, values: Float64Array): boolean {
  const { order, starts, rowSlots, updateStarts, updates, diagonal } = symbolic;
  const floors = new Float64Array(symbolic.size);
  for (let i = 0; i < symbolic.size; i += 1) floors[i] = pivotFloor * Math.abs(values[diagonal[i] ?? 0] ?? 0);
  for (let k = 0; k < symbolic.size; k += 1) {
    const row = order[k] ?? 0;
    const pivot = values[diagonal[row] ?? 0] ?? 0;
    if (!(pivot > (floors[row] ?? 0))) return false;
    let update = updateStarts[k] ?? 0;
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
  const { order, starts, rows, rowSlots, diagonal } = symbolic;
  for (let k = 0; k < symbolic.size; k += 1) {
    const row = order[k] ?? 0;
    const scaled = (right[row] ?? 0) / (values[diagonal[row] ?? 0] ?? 1);
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
    right[row] = sum / (values[diagonal[row] ?? 0] ?? 1);
  }
}
