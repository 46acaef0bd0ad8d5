import { RealRoom } from './scratch-arrays.ts';

/**
 * A symmetric sparse matrix, ready to be solved again and again with other numbers in the same places. Slots of the
 * diagonal come first, row by row, then one that nobody reads, then those of the entries beside it.
 */
export interface SymbolicLdl {
  readonly size: number;
  readonly slots: number;
  /** Rows in the order in which they are eliminated. */
  readonly order: number[];
  /** So many of the first pivots have one entry each, in their place of `rows` and `rowSlots`. */
  readonly tips: number;
  /** For each later pivot in order: where its entries end in `rows` and `rowSlots`; they start where the last one's ended. */
  readonly ends: number[];
  readonly rows: number[];
  readonly rowSlots: number[];
  /** Slots hit by the elimination of the later pivots, pivot by pivot and pair by pair of its entries. */
  readonly updates: number[];
}

/** Pivots at or under this share of their own diagonal entry count as zero. */
const pivotFloor = 1e-13;

const [floorRoom, inverseRoom] = [new RealRoom(), new RealRoom()];

/**
 * Takes the matrix of `values` apart in place, as L D L^T. False unless it is positive definite (some pivot is not
 * above zero): no pivoting is then needed, and definiteness is what the caller wants to know.
 */
export function factorSymmetric(symbolic: SymbolicLdl, values: number[]): boolean {
  const { size } = symbolic;
  const floors = floorRoom.of(size);
  const inverses = inverseRoom.of(size);
  for (let row = 0; row < size; row += 1) floors[row] = pivotFloor * Math.abs(values[row] ?? 0);
  return factorTips(symbolic, values, floors, inverses) && factorRest(symbolic, values, floors, inverses);
}

/** Solves the matrix that `factorSymmetric` took apart last, its `values` as that left them: x in place of `right`. */
export function substitute(symbolic: SymbolicLdl, values: number[], right: number[]): void {
  const inverses = inverseRoom.of(symbolic.size);
  forward(symbolic, values, right, inverses);
  backward(symbolic, values, right, inverses);
}

function factorTips(
  { tips, order, rows, rowSlots }: SymbolicLdl,
  values: number[],
  floors: number[],
  inverses: number[],
): boolean {
  for (let k = 0; k < tips; k += 1) {
    const row = order[k] ?? 0;
    const pivot = values[row] ?? 0;
    if (!(pivot > (floors[row] ?? 0))) return false;
    const inverse = 1 / pivot;
    inverses[row] = inverse;
    const beside = values[rowSlots[k] ?? 0] ?? 0;
    const other = rows[k] ?? 0;
    values[other] = (values[other] ?? 0) - beside * inverse * beside;
  }
  return true;
}

function factorRest(
  { size, tips, order, ends, rowSlots, updates }: SymbolicLdl,
  values: number[],
  floors: number[],
  inverses: number[],
): boolean {
  let update = 0;
  let at = tips;
  for (let k = tips; k < size; k += 1) {
    const row = order[k] ?? 0;
    const pivot = values[row] ?? 0;
    if (!(pivot > (floors[row] ?? 0))) return false;
    const inverse = 1 / pivot;
    inverses[row] = inverse;
    const start = at;
    for (const end = ends[k] ?? 0; at < end; at += 1) {
      const factor = (values[rowSlots[at] ?? 0] ?? 0) * inverse;
      for (let b = start; b <= at; b += 1) {
        const target = updates[update] ?? 0;
        update += 1;
        values[target] = (values[target] ?? 0) - factor * (values[rowSlots[b] ?? 0] ?? 0);
      }
    }
  }
  return true;
}

/** L D y = right: leaves y in `right`. */
function forward(
  { size, tips, order, ends, rows, rowSlots }: SymbolicLdl,
  values: number[],
  right: number[],
  inverses: number[],
): void {
  for (let k = 0; k < tips; k += 1) {
    const row = order[k] ?? 0;
    const other = rows[k] ?? 0;
    const own = (right[row] ?? 0) * (inverses[row] ?? 0);
    right[row] = own;
    right[other] = (right[other] ?? 0) - (values[rowSlots[k] ?? 0] ?? 0) * own;
  }
  let at = tips;
  for (let k = tips; k < size; k += 1) {
    const row = order[k] ?? 0;
    const own = (right[row] ?? 0) * (inverses[row] ?? 0);
    right[row] = own;
    for (const end = ends[k] ?? 0; at < end; at += 1) {
      const other = rows[at] ?? 0;
      right[other] = (right[other] ?? 0) - (values[rowSlots[at] ?? 0] ?? 0) * own;
    }
  }
}

/** L^T x = y. */
function backward(
  { size, tips, order, ends, rows, rowSlots }: SymbolicLdl,
  values: number[],
  right: number[],
  inverses: number[],
): void {
  for (let k = size - 1; k >= tips; k -= 1) {
    const row = order[k] ?? 0;
    let sum = 0;
    const start = k === tips ? tips : (ends[k - 1] ?? 0);
    for (let at = start; at < (ends[k] ?? 0); at += 1)
      sum += (values[rowSlots[at] ?? 0] ?? 0) * (right[rows[at] ?? 0] ?? 0);
    right[row] = (right[row] ?? 0) - sum * (inverses[row] ?? 0);
  }
  for (let k = tips - 1; k >= 0; k -= 1) {
    const row = order[k] ?? 0;
    const beside = (values[rowSlots[k] ?? 0] ?? 0) * (right[rows[k] ?? 0] ?? 0);
    right[row] = (right[row] ?? 0) - beside * (inverses[row] ?? 0);
  }
}
