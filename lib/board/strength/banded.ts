/** A symmetric matrix of which only `band` entries beside the diagonal are not zero; the lower half is kept. */
export interface Banded {
  readonly size: number;
  readonly band: number;
  readonly values: Float64Array;
}

/** A banded matrix of zeros. */
export function banded(size: number, band: number): Banded {
  return { size, band, values: new Float64Array(size * (band + 1)) };
}

/** Adds to one entry; the entry above the diagonal is the same one. */
export function addTo(matrix: Banded, row: number, column: number, value: number): void {
  const [low, high] = row < column ? [row, column] : [column, row];
  const at = high * (matrix.band + 1) + matrix.band - (high - low);
  matrix.values[at] = (matrix.values[at] ?? 0) + value;
}

/**
 * Cholesky factor of a banded matrix, in place of it; null where the matrix is not positive definite, which
 * for a structure means that something can move freely. (Golub, Van Loan: Matrix Computations, banded
 * Cholesky.) `least` is the share of a diagonal entry below which a pivot counts as none.
 */
export function factor(matrix: Banded, least = 1e-11): Banded | null {
  const { size, band, values } = matrix;
  const width = band + 1;
  for (let row = 0; row < size; row += 1) {
    const first = Math.max(0, row - band);
    for (let column = first; column <= row; column += 1) {
      const from = Math.max(first, column - band);
      const [rowAt, columnAt] = [row * width + band - row, column * width + band - column];
      const given = values[rowAt + column] ?? 0;
      let sum = given;
      for (let k = from; k < column; k += 1) sum -= (values[rowAt + k] ?? 0) * (values[columnAt + k] ?? 0);
      if (column < row) values[rowAt + column] = sum / (values[columnAt + column] ?? 1);
      else if (sum <= least * given) return null;
      else values[rowAt + column] = Math.sqrt(sum);
    }
  }
  return matrix;
}

/** Solves for one load with the factor from `factor`. */
export function solve(factored: Banded, load: Float64Array): Float64Array {
  const { size, band, values } = factored;
  const width = band + 1;
  const x = Float64Array.from(load);
  for (let row = 0; row < size; row += 1) {
    const at = row * width + band - row;
    let sum = x[row] ?? 0;
    for (let k = Math.max(0, row - band); k < row; k += 1) sum -= (values[at + k] ?? 0) * (x[k] ?? 0);
    x[row] = sum / (values[at + row] ?? 1);
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    const at = row * width + band - row;
    const value = (x[row] ?? 0) / (values[at + row] ?? 1);
    x[row] = value;
    for (let k = Math.max(0, row - band); k < row; k += 1) x[k] = (x[k] ?? 0) - (values[at + k] ?? 0) * value;
  }
  return x;
}
