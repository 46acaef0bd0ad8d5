/** A cell of a square of five by five tracks. */
export type Cell = readonly [column: number, row: number];

/** A wire on the square: the cells that it begins and ends in, and the step that leads into the first and out of the last. */
export interface TrackWire {
  readonly start: Cell;
  readonly inward: Cell;
  readonly goal: Cell;
  readonly outward: Cell;
}

const size = 5;
const bit = ([x, y]: Cell): number => 1 << (x * size + y);
const steps: readonly Cell[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

/** The cells that a path passes level, upright, and in which it bends, as sets of bits. */
interface Path {
  readonly level: number;
  readonly upright: number;
  readonly bends: number;
}

/** Every path of a wire that meets no cell twice. */
function allPaths({ start, inward, goal, outward }: TrackWire, blocked: number): Path[] {
  const found: Path[] = [];
  const go = (at: Cell, came: Cell, seen: number, path: Path): void => {
    const here = bit(at);
    const leave = (by: Cell): Path => {
      if (came[0] !== by[0] || came[1] !== by[1]) return { ...path, bends: path.bends | here };
      return by[1] === 0 ? { ...path, level: path.level | here } : { ...path, upright: path.upright | here };
    };
    if (at[0] === goal[0] && at[1] === goal[1]) {
      if (came[0] !== -outward[0] || came[1] !== -outward[1]) found.push(leave(outward));
      return;
    }
    for (const by of steps) {
      const next: Cell = [at[0] + by[0], at[1] + by[1]];
      if (next.some((value) => value < 0 || value >= size)) continue;
      if (by[0] === -came[0] && by[1] === -came[1]) continue;
      if (((seen | blocked) & bit(next)) === 0) go(next, by, seen | bit(next), leave(by));
    }
  };
  go(start, inward, bit(start), { level: 0, upright: 0, bends: 0 });
  return found;
}

function count(bits: number): number {
  let left = bits;
  let sum = 0;
  for (; left !== 0; left &= left - 1) sum += 1;
  return sum;
}

/** How often two paths cross; null where they share a track or a bend. */
function crossing(a: Path, b: Path): number | null {
  if ((a.bends & (b.level | b.upright | b.bends)) !== 0 || (b.bends & (a.level | a.upright)) !== 0)
    return null;
  if ((a.level & b.level) !== 0 || (a.upright & b.upright) !== 0) return null;
  return count(a.level & b.upright) + count(a.upright & b.level);
}

/** The fewest crossings over every choice of paths for all wires at once; infinite where they do not all fit. */
export function fewestByAllTracks(wires: readonly TrackWire[], blocked: readonly Cell[]): number {
  const walls = blocked.reduce((bits, cell) => bits | bit(cell), 0);
  const paths = wires.map((wire) => allPaths(wire, walls));
  let fewest = Infinity;
  const go = (laid: readonly Path[], sum: number): void => {
    if (sum >= fewest) return;
    const own = paths[laid.length];
    if (!own) {
      fewest = sum;
      return;
    }
    for (const path of own) {
      let all: number | null = sum;
      for (const other of laid) {
        const more: number | null = crossing(path, other);
        all = more === null || all === null ? null : all + more;
      }
      if (all !== null && all < fewest) go([...laid, path], all);
    }
  };
  go([], 0);
  return fewest;
}
