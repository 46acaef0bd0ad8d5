import { opposite, type Side } from '../layout/item.ts';
import { distance, edgesOf, type Point, segmentsCross } from '../shape/point.ts';
import { into, outFrom } from './route.ts';
import { barriersBefore, nodeAt, pointOf, type TrackGrid } from './track-grid.ts';

/** Directions in the order of their numbers, and the step along columns and rows that each takes. */
export const ways: readonly Side[] = ['right', 'top', 'left', 'bottom'];
const step = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/** A point of the grid at which a wire comes onto it or leaves it. */
export interface Gate {
  readonly node: number;
  readonly way: number;
  /** From the end of the wire to the node. */
  readonly stub: readonly Point[];
  /** Any direction will do; turning into `way` costs a bend. */
  readonly loose: boolean;
}

/** The grid as a wire of some thickness sees it. */
export interface Ground {
  readonly grid: TrackGrid;
  /** Room that the wire's centre line needs, metres. */
  readonly roomM: number;
  /** The same at points of the grid. */
  readonly needM: number;
  /** 1 for each point that a wire may pass; what stands in the way may be passed where `through` is true. */
  readonly open: Uint8Array;
  readonly through: boolean;
}

/** The points that a wire with so much need of room may pass. */
export function groundFor(
  grid: TrackGrid,
  { roomM, needM }: Pick<Ground, 'roomM' | 'needM'>,
  through: boolean,
): Ground {
  const open = Uint8Array.from(grid.toEdgeM, (toEdgeM, node) =>
    toEdgeM >= needM && (through || (grid.toBarrierM[node] ?? 0) >= needM) ? 1 : 0,
  );
  return { grid, roomM, needM, open, through };
}

/** From a terminal so near to the edge that the grid has no point between: straight over it, where nothing is in the way. */
export function straightOut(ground: Ground, terminal: Point, side: Side): readonly Point[] | null {
  const { grid, needM } = ground;
  const edge = edgeAhead(grid, outFrom(terminal, opposite[side], 1e-6), side);
  if (!edge || distance(terminal, edge) >= needM + grid.stepM) return null;
  return isShut(ground, terminal, edge) ? null : [terminal, edge];
}

/** Whether anything but the terminal's own part stands on the way straight out of it. */
function isShut({ grid, roomM, through }: Ground, terminal: Point, out: Point): boolean {
  return !through && barriersBefore(grid.barriers, terminal, out, roomM).length > 0;
}

/**
 * The first point of the grid straight out of a terminal that has room for the wire; null where anything but its own
 * part stands before it, unless what stands in the way may be passed.
 */
export function terminalGate(ground: Ground, terminal: Point, faces: Side): Gate | null {
  const { grid, open } = ground;
  const [x, y] = [indexOf(grid.xs, terminal.xM), indexOf(grid.ys, terminal.yM)];
  if (x < 0 || y < 0) return null;
  const way = ways.indexOf(faces);
  const [dx, dy] = step[way] ?? [0, 0];
  for (let far = 1; far < 40; far += 1) {
    const node = nodeAt(grid, x + far * dx, y + far * dy);
    if (node < 0) return null;
    if (open[node] !== 1) continue;
    // The end stands on its line of the grid exactly, so that the stub is straight to the last digit.
    const { xM, yM } = pointOf(grid, node);
    if (isShut(ground, terminal, { xM, yM })) return null;
    const end = dx === 0 ? { xM, yM: terminal.yM } : { xM: terminal.xM, yM };
    return { node, way, stub: [end, { xM, yM }], loose: false };
  }
  return null;
}

/** The same for a wire that goes into the terminal. */
export function goalGate(ground: Ground, terminal: Point & { readonly faces: Side }): Gate | null {
  const gate = terminalGate(ground, terminal, terminal.faces);
  return gate && { ...gate, way: ways.indexOf(into(terminal.faces)), stub: gate.stub.toReversed() };
}

/** The points from which a wire goes straight over a side of the board, nothing in between. */
export function exitGates({ grid, needM, open }: Ground, side: Side): Gate[] {
  const way = ways.indexOf(side);
  const [dx, dy] = step[way] ?? [0, 0];
  const across = dx === 0 ? grid.xs.length : grid.ys.length;
  const deep = dx === 0 ? grid.ys.length : grid.xs.length;
  return Array.from({ length: across }, (_, line) => line).flatMap((line): Gate[] => {
    for (let back = 0; back < deep; back += 1) {
      const along = dx + dy > 0 ? deep - 1 - back : back;
      const node = dx === 0 ? nodeAt(grid, line, along) : nodeAt(grid, along, line);
      if (open[node] !== 1) {
        // Board with a part or a fixing on it, and not merely the edge, is in front of every point further in.
        if ((grid.toEdgeM[node] ?? -1) >= 0 && (grid.toBarrierM[node] ?? 0) < needM) return [];
        continue;
      }
      const point = pointOf(grid, node);
      const toEdge = edgeAhead(grid, point, side);
      const reachM = needM + grid.stepM + 1e-6;
      if (!toEdge || distance(point, toEdge) > reachM) return [];
      return [{ node, way, stub: [point, toEdge], loose: true }];
    }
    return [];
  });
}

/** Where a ray leaves the board. */
function edgeAhead(grid: TrackGrid, from: Point, side: Side): Point | null {
  const span = grid.box.maxX - grid.box.minX + grid.box.maxY - grid.box.minY;
  const far = outFrom(from, side, span);
  const hits = edgesOf(grid.outer).flatMap(([a, b]) => {
    if (!segmentsCross(from, far, a, b)) return [];
    const level = side === 'right' || side === 'left';
    const share = level ? (from.yM - a.yM) / (b.yM - a.yM) : (from.xM - a.xM) / (b.xM - a.xM);
    return [{ xM: a.xM + share * (b.xM - a.xM), yM: a.yM + share * (b.yM - a.yM) }];
  });
  const [first] = hits.toSorted((p, q) => distance(from, p) - distance(from, q));
  if (!first) return null;
  return side === 'right' || side === 'left' ? { xM: first.xM, yM: from.yM } : { xM: from.xM, yM: first.yM };
}

function indexOf(lines: readonly number[], value: number): number {
  return lines.findIndex((line) => Math.abs(line - value) < 1e-6);
}
