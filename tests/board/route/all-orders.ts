import type { Box, Point } from '../../../lib/board/shape/point.ts';

/** A wire between two cells of a grid, and the steps that lead out of its first and into its last. */
export interface GridWire {
  readonly from: Point;
  readonly to: Point;
  /** Unit steps: away from the first end, and into the second. */
  readonly out: readonly [number, number];
  readonly into: readonly [number, number];
}

/** A grid of cells with parts on it that no wire passes. */
export interface Field {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly parts: readonly Box[];
}

const steps = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/** Cells that a laid wire passes level, passes upright, or bends or ends in. */
interface Taken {
  readonly level: ReadonlySet<number>;
  readonly upright: ReadonlySet<number>;
  readonly bends: ReadonlySet<number>;
}

/** The path with the fewest crossings, and of those the shortest, past laid wires; null where there is none. */
function cheapest(
  field: Field,
  wire: GridWire,
  laid: readonly Taken[],
): (Taken & { crossed: number }) | null {
  const { xs, ys, parts } = field;
  const node = ({ xM, yM }: Point) =>
    xs.findIndex((x) => Math.abs(x - xM) < 1e-6) * ys.length + ys.findIndex((y) => Math.abs(y - yM) < 1e-6);
  const free = xs.flatMap((x) =>
    ys.map((y) =>
      parts.every((p) => x < p.minX - 1e-9 || x > p.maxX + 1e-9 || y < p.minY - 1e-9 || y > p.maxY + 1e-9),
    ),
  );
  const cells = xs.length * ys.length;
  const count = (which: keyof Taken) => {
    const sum = new Uint8Array(cells);
    for (const one of laid) for (const at of one[which]) sum[at] = (sum[at] ?? 0) + 1;
    return sum;
  };
  const counts = { level: count('level'), upright: count('upright'), bends: count('bends') };
  const has = (which: keyof Taken, at: number) => counts[which][at] ?? 0;
  const wayOf = ([x, y]: readonly [number, number]) => steps.findIndex((s) => s[0] === x && s[1] === y);
  const along = (way: number) => (way % 2 === 0 ? 'level' : 'upright');
  /** What it costs to come to a cell one way and leave it another; infinite where a wire has that track. */
  const pass = (at: number, came: number, leaves: number): number => {
    if (has('bends', at) > 0) return Infinity;
    if (came !== leaves) return has('level', at) + has('upright', at) > 0 ? Infinity : 0;
    return has(along(came), at) > 0 ? Infinity : has(along(came) === 'level' ? 'upright' : 'level', at) * 1e6;
  };
  const [first, last] = [node(wire.from), node(wire.to)];
  const start = first * 4 + wayOf(wire.out);
  const cost = new Map<number, number>([[start, 0]]);
  const before = new Map<number, number>();
  // One list of states for each number of crossings and steps: the cheapest lists are emptied first.
  const open = new Map<number, number[]>([[0, [start]]]);
  while (open.size > 0) {
    const least = Math.min(...open.keys());
    const state = open.get(least)?.pop();
    if (state === undefined) open.delete(least);
    if (state === undefined || (cost.get(state) ?? 0) < least) continue;
    const [at, came] = [state >> 2, state & 3];
    const soFar = cost.get(state) ?? 0;
    for (const [way, [dx, dy]] of steps.entries()) {
      if (way === ((came + 2) & 3)) continue;
      const [x, y] = [Math.floor(at / ys.length) + dx, (at % ys.length) + dy];
      const next = x < 0 || y < 0 || x >= xs.length || y >= ys.length ? -1 : x * ys.length + y;
      if (next < 0 || free[next] !== true) continue;
      const total = soFar + pass(at, came, way) + 1;
      const there = next * 4 + way;
      if (total === Infinity || total >= (cost.get(there) ?? Infinity)) continue;
      cost.set(there, total);
      before.set(there, state);
      open.set(total, [...(open.get(total) ?? []), there]);
    }
  }
  const endWay = wayOf(wire.into);
  const finals = [0, 1, 2, 3]
    .filter((came) => came !== ((endWay + 2) & 3))
    .map((came) => ({ came, total: (cost.get(last * 4 + came) ?? Infinity) + pass(last, came, endWay) }))
    .toSorted((a, b) => a.total - b.total);
  const [end] = finals;
  if (!end || end.total === Infinity) return null;
  const [level, upright, bends] = [new Set<number>(), new Set<number>(), new Set<number>()];
  let leaves = endWay;
  for (let state: number | undefined = last * 4 + end.came; state !== undefined; state = before.get(state)) {
    const [at, came] = [state >> 2, state & 3];
    (came !== leaves ? bends : came % 2 === 0 ? level : upright).add(at);
    leaves = came;
  }
  return { level, upright, bends, crossed: Math.floor(end.total / 1e6 + 1e-9) };
}

/** The fewest crossings over every order of laying the wires, each where it crosses least of those that lie already. */
export function fewestByAllOrders(field: Field, wires: readonly GridWire[]): number {
  let fewest = Infinity;
  const go = (left: readonly GridWire[], laid: readonly Taken[], sum: number): void => {
    if (sum >= fewest) return;
    if (left.length === 0) fewest = sum;
    for (const wire of left) {
      const path = cheapest(field, wire, laid);
      if (path)
        go(
          left.filter((one) => one !== wire),
          [...laid, path],
          sum + path.crossed,
        );
    }
  };
  go(wires, [], 0);
  return fewest;
}
