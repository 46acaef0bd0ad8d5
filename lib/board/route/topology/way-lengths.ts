import type { Point } from '../../shape/point.ts';
import type { BoardMap } from './board-map.ts';
import type { MapEdge } from './map-edge.ts';
import type { MapWire, WayCosts } from './map-wire.ts';
import type { Passage, Way } from './sketch.ts';
import { rangesAlong } from './way-ranges.ts';

/** One step of a way: through a cell, to a place on an edge. */
export interface Step {
  readonly edge: number;
  readonly slot: number;
  /** The number of the passage. */
  readonly passage: number;
  readonly crossings: number;
  /** What it costs that there is no room (m). */
  readonly fullM: number;
}

const passages: readonly Passage[] = ['turn', 'level', 'upright', 'step'];

/** From the middle of one side of a cell to the middle of another, along x and y (m). */
export function lengthThrough({ xs, ys }: BoardMap, cell: number, side: number, to: number): number {
  const rows = ys.length - 1;
  const column = Math.floor(cell / rows);
  const row = cell - column * rows;
  const widthM = (xs[column + 1] ?? 0) - (xs[column] ?? 0);
  const heightM = (ys[row + 1] ?? 0) - (ys[row] ?? 0);
  if (((side + 2) & 3) !== to) return (widthM + heightM) / 2;
  return (side & 1) === 0 ? widthM : heightM;
}

/** By edge: the least distance along x and y from its middle to the edges that a wire goes to (m). */
export function leastLeft({ edges }: BoardMap, { to }: MapWire): Float64Array {
  const goals = edges.filter((edge, at) =>
    'edge' in to ? at === to.edge : edge.kind === 'exit' && edge.side === to.exitSide,
  );
  const points = goals.map(middleOf);
  return Float64Array.from(edges, (edge) => {
    const { xM, yM } = middleOf(edge);
    let leastM = Infinity;
    for (const p of points) leastM = Math.min(leastM, Math.abs(p.xM - xM) + Math.abs(p.yM - yM));
    return leastM;
  });
}

function middleOf({ upright, lineM, fromM, toM }: MapEdge): Point {
  const middleM = (fromM + toM) / 2;
  return upright ? { xM: lineM, yM: middleM } : { xM: middleM, yM: lineM };
}

/** A way from the edge of a terminal through steps, with what it costs. */
export function wayThrough(
  map: BoardMap,
  wire: MapWire,
  start: { readonly edge: number; readonly slot: number },
  steps: readonly Step[],
  cost: number,
  { crossingM, clearanceM }: WayCosts,
): Way {
  const goesOn = 'edge' in wire.to ? steps.slice(0, -1) : steps;
  const crossings = steps.reduce((sum, step) => sum + step.crossings, 0);
  const fullM = goesOn.reduce((sum, step) => sum + step.fullM, 0);
  const edges = [start.edge, ...steps.map(({ edge }) => edge)];
  const passed = steps.map(({ passage }) => passages[passage] ?? 'turn');
  return {
    edges,
    slots: [start.slot, ...steps.map(({ slot }) => slot)],
    ranges: rangesAlong(map, edges, passed, wire, wire.widthM / 2 + clearanceM),
    cells: cellsAlong(map, wire.from.cell, steps),
    passages: passed,
    bareM: cost - crossings * crossingM - fullM,
  };
}

function cellsAlong({ edges }: BoardMap, first: number, steps: readonly Step[]): number[] {
  const cells = [first];
  for (const { edge } of steps.slice(0, -1)) {
    const [low, high] = edges[edge]?.cells ?? [-1, -1];
    cells.push(cells.at(-1) === low ? high : low);
  }
  return cells;
}
