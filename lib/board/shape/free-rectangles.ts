import type { Box } from './point.ts';

/**
 * The upright rectangles between lines of a grid of which every cell is free, each as high as it can be between its left
 * and its right line. `xs`, `ys`: where the lines run, in rising order, metres. Where cells keep a distance to something
 * the rectangle that they make up does too, since each of its points lies in one of them.
 */
export function freeRectangles(
  xs: readonly number[],
  ys: readonly number[],
  isFree: (cell: Box) => boolean,
): readonly Box[] {
  const free = columnsOf(xs, ys, isFree);
  const found: Box[] = [];
  for (let left = 0; left < free.length; left += 1) {
    let rows: readonly boolean[] = free[left] ?? [];
    for (let right = left; right < free.length; right += 1) {
      rows = rows.map((one, row) => one && free[right]?.[row] === true);
      for (const [low, high] of stretchesOf(rows))
        found.push({
          minX: xs[left] ?? 0,
          maxX: xs[right + 1] ?? 0,
          minY: ys[low] ?? 0,
          maxY: ys[high] ?? 0,
        });
    }
  }
  return found;
}

/** Of each column of cells, which are free, from below. */
function columnsOf(
  xs: readonly number[],
  ys: readonly number[],
  isFree: (cell: Box) => boolean,
): readonly (readonly boolean[])[] {
  return xs.slice(1).map((maxX, column) => {
    const minX = xs[column] ?? maxX;
    return ys.slice(1).map((maxY, row) => isFree({ minX, maxX, minY: ys[row] ?? maxY, maxY }));
  });
}

/** Where in a list it is true without a gap: from which place, and up to before which. */
function stretchesOf(rows: readonly boolean[]): readonly (readonly [number, number])[] {
  const found: (readonly [number, number])[] = [];
  let from = -1;
  for (let at = 0; at <= rows.length; at += 1) {
    if (rows[at] === true && from < 0) from = at;
    if (rows[at] !== true && from >= 0) {
      found.push([from, at]);
      from = -1;
    }
  }
  return found;
}
