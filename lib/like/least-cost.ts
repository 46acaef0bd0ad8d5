/**
 * The cheapest way to give each row a column of its own: the column of each row. At least as many columns as rows; all
 * costs finite. By shortest augmenting paths with potentials (Kuhn and Munkres; Burkard, Dell'Amico and Martello,
 * Assignment Problems, chapter 4), in the order of the rows, so that the same costs give the same answer.
 */
export function leastCost(costs: readonly (readonly number[])[]): number[] {
  const columns = costs[0]?.length ?? 0;
  const potentials = { row: costs.map(() => 0), column: Array.from({ length: columns }, () => 0) };
  const rowOf: number[] = Array.from({ length: columns }, () => -1);
  for (const row of costs.keys()) augment(costs, row, rowOf, potentials);
  const taken: number[] = costs.map(() => -1);
  for (const [column, row] of rowOf.entries()) if (row >= 0) taken[row] = column;
  return taken;
}

interface Potentials {
  readonly row: number[];
  readonly column: number[];
}

/** Finds a column for one more row, moving others where that is cheaper (the method of Dijkstra on reduced costs). */
function augment(
  costs: readonly (readonly number[])[],
  start: number,
  rowOf: number[],
  { row: u, column: v }: Potentials,
): void {
  const far = v.map(() => Number.POSITIVE_INFINITY);
  const from = v.map(() => -1);
  const done = v.map(() => false);

  let row = start;
  let column = -1;
  for (;;) {
    let next = -1;
    const reached = column < 0 ? 0 : (far[column] ?? 0);
    for (const [at, isDone] of done.entries()) {
      if (isDone) continue;
      const reduced = reached + (costs[row]?.[at] ?? 0) - (u[row] ?? 0) - (v[at] ?? 0);
      if (reduced < (far[at] ?? 0) - 1e-12) {
        far[at] = reduced;
        from[at] = column;
      }
      if (next < 0 || (far[at] ?? 0) < (far[next] ?? 0)) next = at;
    }
    if (next < 0) throw new Error('There are fewer columns than rows.');
    done[next] = true;
    column = next;
    const owner = rowOf[column] ?? -1;
    if (owner < 0) break;
    row = owner;
  }
  const end = far[column] ?? 0;
  for (const [at, isDone] of done.entries()) {
    if (!isDone || at === column) continue;
    const gain = end - (far[at] ?? 0);
    v[at] = (v[at] ?? 0) - gain;
    const owner = rowOf[at] ?? -1;
    u[owner] = (u[owner] ?? 0) + gain;
  }
  u[start] = (u[start] ?? 0) + end;
  for (let at = column; at >= 0; at = from[at] ?? -1) rowOf[at] = ownerBefore(from, rowOf, at, start);
}

/** The row that a column comes to have along the path: that of the column before it, or the row that the path began with. */
function ownerBefore(from: readonly number[], rowOf: readonly number[], at: number, start: number): number {
  const before = from[at] ?? -1;
  return before < 0 ? start : (rowOf[before] ?? start);
}
