/**
 * Moves wanted positions (ascending) apart so that neighbours are at least `pitch` from each other and all
 * lie from `low` to `high`, with the least sum of squared moves; null where there are too many for the room.
 *
 * Less `index * pitch`, the condition is that positions ascend: isotonic regression, solved by pooling
 * adjacent violators, then held in bounds, which keeps it best.
 */
export function spreadApart(
  wanted: readonly number[],
  pitch: number,
  low: number,
  high: number,
): number[] | null {
  const last = (wanted.length - 1) * pitch;
  if (wanted.length > 0 && high - low < last) return null;
  return pooled(wanted.map((position, index) => position - index * pitch)).map(
    (value, index) => Math.min(Math.max(value, low), high - last) + index * pitch,
  );
}

interface Pool {
  sum: number;
  count: number;
}

function pooled(values: readonly number[]): number[] {
  const pools: Pool[] = [];
  for (const value of values) {
    let pool: Pool = { sum: value, count: 1 };
    for (let before = pools.at(-1); before && before.sum / before.count > pool.sum / pool.count; ) {
      pools.pop();
      pool = { sum: before.sum + pool.sum, count: before.count + pool.count };
      before = pools.at(-1);
    }
    pools.push(pool);
  }
  return pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
}
