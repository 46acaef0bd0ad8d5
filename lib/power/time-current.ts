/** A point of a fuse's time-current data: at so many times its rating it carries the current for so long at least. */
export interface TimeCurrentPoint {
  readonly multiple: number;
  readonly seconds: number;
}

/**
 * How long a fuse carries a current at least before it opens (s), by its maker's time-current data, at a multiple of its
 * rating. Up to its rating without end (a rated current is what it carries for ever: IEC 60269-1, ISO 8820-1). Between
 * two points the time of the larger current counts, below the first point that of the first: a step, which errs to the
 * short side. Null past the last point, and without data: nothing is known there.
 */
export function carriesForS(points: readonly TimeCurrentPoint[], multiple: number): number | null {
  if (multiple <= 1 + 1e-9) return Number.POSITIVE_INFINITY;
  const reached = points.filter((point) => point.multiple >= multiple - 1e-9);
  const [next] = reached.toSorted((a, b) => a.multiple - b.multiple);
  return next?.seconds ?? null;
}
