import { outward, type Side, sides } from '../../layout/item.ts';
import { flatten } from '../../shape/bulge.ts';
import type { BoardShape } from '../../shape/outline.ts';
import { type Box, boxOf, insideRing, type Point, type Ring } from '../../shape/point.ts';
import type { Barrier } from '../track-grid.ts';
import { roomsOfCuts } from './cut-rooms.ts';
import type { MapEdge } from './map-edge.ts';
import { anywhere } from './pass.ts';

/**
 * The free space of a board in cells between lines: one line along each side of each part and cut-out, and two through
 * each fixing, which stands at their meeting point. Wires are told apart by the edges that they pass, in which order.
 */
export interface BoardMap {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** 1 for each cell that is board with nothing on it, by `column * (ys.length - 1) + row`. */
  readonly open: Uint8Array;
  readonly edges: readonly MapEdge[];
  /** The edges of each cell in the order right, top, left, bottom: `cell * 4 + side`. */
  readonly edgeOf: Int32Array;
  /** From the side of a cell that lies opposite to a side, straight through it and on to what stands there (m). */
  readonly reachM: Float64Array;
  /** Free room across each narrow place, from what stands on one side of it to the other (m). */
  readonly roomsM: readonly number[];
}

/** A terminal, and the way that it faces. */
export type MapPoint = Point & { readonly faces: Side };

/** Lines nearer to each other than this are one (m). */
const sameLineM = 0.0005;

/** The map of a board with what stands on it. */
export function boardMap(
  shape: BoardShape,
  barriers: readonly Barrier[],
  terminals: readonly MapPoint[],
): BoardMap {
  const [outer = [], ...openings] = [shape.outline, ...shape.cutouts].map((loop) => flatten(loop, 0.0002));
  const boxes = [...openings.map(boxOf), ...barriers.flatMap((one) => ('box' in one ? [one.box] : []))];
  const rounds = [
    ...barriers.flatMap((one) => ('centre' in one ? [one.centre] : [])),
    ...shape.holes.map(({ xM, yM }) => ({ xM, yM })),
  ];
  const lines = linesOf(outer, boxes, rounds, terminals);
  const open = openCells(lines, outer, openings, barriers);
  const cells = { ...lines, open };
  return { ...cells, reachM: reaches(cells), ...edgesOfCells(cells, outer, barriers, shape) };
}

type Lines = Pick<BoardMap, 'xs' | 'ys'>;
type Cells = Pick<BoardMap, 'xs' | 'ys' | 'open'>;

function linesOf(
  outer: Ring,
  boxes: readonly Box[],
  rounds: readonly Point[],
  terminals: readonly MapPoint[],
): Lines {
  const box = boxOf(outer);
  // Corners that are cut off are no corridors: of the outline the lines that an edge runs along are enough.
  const sidesOf = (pick: (p: Point) => number) =>
    outer.flatMap((a, at) => {
      const b = outer[(at + 1) % outer.length] ?? a;
      return Math.abs(pick(a) - pick(b)) < sameLineM ? [pick(a)] : [];
    });
  // Terminals of what stands raised lie on no side of a box: each is on a line of its own.
  const isUpright = ({ faces }: MapPoint) => faces === 'right' || faces === 'left';
  const xs = [...sidesOf(({ xM }) => xM), ...terminals.filter(isUpright).map(({ xM }) => xM)];
  const ys = [...sidesOf(({ yM }) => yM), ...terminals.filter((one) => !isUpright(one)).map(({ yM }) => yM)];
  return {
    xs: apart(
      [...xs, ...boxes.flatMap(({ minX, maxX }) => [minX, maxX]), ...rounds.map(({ xM }) => xM)],
      box.minX,
      box.maxX,
    ),
    ys: apart(
      [...ys, ...boxes.flatMap(({ minY, maxY }) => [minY, maxY]), ...rounds.map(({ yM }) => yM)],
      box.minY,
      box.maxY,
    ),
  };
}

function apart(values: readonly number[], from: number, to: number): number[] {
  const lines = [from];
  for (const value of values.toSorted((a, b) => a - b)) {
    const last = lines.at(-1) ?? from;
    if (value > last + sameLineM && value < to - sameLineM) lines.push(value);
  }
  return [...lines, to];
}

function openCells(
  { xs, ys }: Lines,
  outer: Ring,
  openings: readonly Ring[],
  barriers: readonly Barrier[],
): Uint8Array {
  const rows = ys.length - 1;
  return Uint8Array.from({ length: (xs.length - 1) * rows }, (_, cell) => {
    const centre = middleOf({ xs, ys }, cell);
    if (!insideRing(centre, outer) || openings.some((ring) => insideRing(centre, ring))) return 0;
    return barriers.some((one) => 'box' in one && insideBox(centre, one.box)) ? 0 : 1;
  });
}

/** The middle of a cell. */
export function middleOf({ xs, ys }: Lines, cell: number): Point {
  const rows = ys.length - 1;
  const [column, row] = [Math.floor(cell / rows), cell % rows];
  return {
    xM: ((xs[column] ?? 0) + (xs[column + 1] ?? 0)) / 2,
    yM: ((ys[row] ?? 0) + (ys[row + 1] ?? 0)) / 2,
  };
}

function insideBox({ xM, yM }: Point, { minX, minY, maxX, maxY }: Box): boolean {
  return xM > minX && xM < maxX && yM > minY && yM < maxY;
}

/** The cell that has a point in it, or on its lower or left line; -1 outside the map. */
export function cellAt({ xs, ys }: Lines, { xM, yM }: Point): number {
  const column = xs.findLastIndex((line) => line <= xM);
  const row = ys.findLastIndex((line) => line <= yM);
  return column < 0 || row < 0 || column >= xs.length - 1 || row >= ys.length - 1
    ? -1
    : column * (ys.length - 1) + row;
}

/** The cell beyond a side of a cell; -1 where the map ends. */
export function cellBeyond({ xs, ys }: Lines, cell: number, side: Side): number {
  const rows = ys.length - 1;
  const { xM, yM } = outward[side];
  const [column, row] = [Math.floor(cell / rows) + xM, (cell % rows) + yM];
  return column < 0 || row < 0 || column >= xs.length - 1 || row >= rows ? -1 : column * rows + row;
}

function reaches(cells: Cells): Float64Array {
  const { xs, ys, open } = cells;
  const rows = ys.length - 1;
  const reachM = new Float64Array(open.length * 4);
  for (let cell = 0; cell < open.length; cell += 1)
    for (const [at, side] of sides.entries())
      for (let next = cell; next >= 0 && open[next] === 1; next = cellBeyond(cells, next, side)) {
        const [column, row] = [Math.floor(next / rows), next % rows];
        const [lines, line] = (at & 1) === 0 ? [xs, column] : [ys, row];
        reachM[cell * 4 + at] = (reachM[cell * 4 + at] ?? 0) + (lines[line + 1] ?? 0) - (lines[line] ?? 0);
      }
  return reachM;
}

function edgesOfCells(
  cells: Cells,
  outer: Ring,
  barriers: readonly Barrier[],
  shape: BoardShape,
): Pick<BoardMap, 'edges' | 'edgeOf' | 'roomsM'> {
  const edges: Omit<MapEdge, 'cuts' | 'between'>[] = [];
  const edgeOf = new Int32Array(cells.open.length * 4).fill(-1);
  for (let cell = 0; cell < cells.open.length; cell += 1) {
    if (cells.open[cell] !== 1) continue;
    for (const [at, side] of sides.entries()) {
      const beyond = cellBeyond(cells, cell, side);
      const isOpen = beyond >= 0 && cells.open[beyond] === 1;
      const known = isOpen ? (edgeOf[beyond * 4 + ((at + 2) & 3)] ?? -1) : -1;
      edgeOf[cell * 4 + at] = known >= 0 ? known : edges.length;
      if (known < 0) edges.push(edgeBetween(cells, cell, side, isOpen ? beyond : -1, outer));
    }
  }
  const { cuts, roomsM, ends } = roomsOfCuts(edges, barriers, shape.holes);
  return {
    edges: edges.map((edge, at) => ({
      ...edge,
      cuts: cuts[at] ?? [],
      between: ends[cuts[at]?.[0] ?? -1] ?? anywhere,
    })),
    edgeOf,
    roomsM,
  };
}

function edgeBetween(
  lines: Lines,
  cell: number,
  side: Side,
  beyond: number,
  outer: Ring,
): Omit<MapEdge, 'cuts' | 'between'> {
  const { xs, ys } = lines;
  const rows = ys.length - 1;
  const [column, row] = [Math.floor(cell / rows), cell % rows];
  const upright = side === 'right' || side === 'left';
  const far = side === 'right' || side === 'top';
  const outside = cellBeyond(lines, cell, side);
  const isOff = outside < 0 || !insideRing(middleOf(lines, outside), outer);
  const kind = beyond >= 0 ? 'portal' : isOff ? 'exit' : 'wall';
  return {
    kind,
    upright,
    side: sides.indexOf(side),
    lineM: (upright ? xs[column + Number(far)] : ys[row + Number(far)]) ?? 0,
    fromM: (upright ? ys[row] : xs[column]) ?? 0,
    toM: (upright ? ys[row + 1] : xs[column + 1]) ?? 0,
    cells: far ? [cell, beyond] : [beyond, cell],
  };
}
