import { boxOf, type Point } from '../shape/point.ts';
import { insideRegion, pointToRegionLine, regionBox } from '../shape/region.ts';
import { fitBoard, type LoadedBoard, type MountingSpace } from './fit-in-space.ts';

/** A point of the space that a fixing goes into, with the room it needs to the edge of the board. Metres. */
export interface FixedPoint extends Point {
  readonly id: string;
  readonly edgeM: number;
}

/** What is missing most where a board stands: between it and what, and by how much. */
export interface Lack {
  /** The obstacle, the fixing, or the part of the board that is in the way, `board` for the board itself. */
  readonly of: readonly string[];
  readonly rule: string;
  /** Room there, metres; below zero it overlaps. */
  readonly roomM: number;
  readonly limitM: number;
}

/** Where the datum corner goes in the space; `lack` is null where the place is free. */
export interface BoardPlace extends Point {
  readonly stepM: number;
  readonly tried: number;
  readonly lack: Lack | null;
}

/** Steps that a grid has at most along one side, so that the search is bounded. */
const mostSteps = 40;
const gridM = 0.01;

/** How a board stands in its space, metres: off its back wall, and clear of all else by so much. */
export interface Standing {
  readonly standoffM: number;
  readonly clearanceM: number;
}

/**
 * The first place of a grid (10 mm, wider in a large space; row by row from the low corner) where a board is
 * inside its space, clear of every obstacle, and its fixings come through it. Where none is free, the place
 * that lacks least, with what it lacks. Only plan view counts: depth is the same everywhere.
 */
export function placeBoard(
  board: LoadedBoard,
  space: MountingSpace,
  points: readonly FixedPoint[],
  { standoffM, clearanceM }: Standing,
): BoardPlace {
  const own = regionBox(board.shape.region);
  const room = boxOf(space.outline);
  const from = { xM: room.minX - own.minX, yM: room.minY - own.minY };
  const freeX = Math.max(0, room.maxX - own.maxX - from.xM);
  const freeY = Math.max(0, room.maxY - own.maxY - from.yM);
  const stepM = gridM * Math.max(1, Math.ceil(Math.max(freeX, freeY) / (gridM * mostSteps)));
  let best: BoardPlace | null = null;
  let tried = 0;
  for (let row = 0; row * stepM <= freeY + 1e-9; row += 1)
    for (let column = 0; column * stepM <= freeX + 1e-9; column += 1) {
      tried += 1;
      const at = { xM: from.xM + column * stepM, yM: from.yM + row * stepM };
      const lack = lackAt(at, board, space, points, { standoffM, clearanceM });
      if (!lack) return { ...at, stepM, tried, lack };
      if (!best?.lack || missing(lack) < missing(best.lack)) best = { ...at, stepM, tried, lack };
    }
  return { ...(best ?? { ...from, stepM, lack: null }), tried };
}

const missing = ({ roomM, limitM }: Lack): number => limitM - roomM;

function lackAt(
  at: Point,
  board: LoadedBoard,
  space: MountingSpace,
  points: readonly FixedPoint[],
  { standoffM, clearanceM }: Standing,
): Lack | null {
  const fixed = points.flatMap(({ id, edgeM, xM, yM }): Lack[] => {
    const onBoard = { xM: xM - at.xM, yM: yM - at.yM };
    const lineM = pointToRegionLine(onBoard, board.shape.region);
    const roomM = insideRegion(onBoard, board.shape.region) ? lineM : -lineM;
    return roomM < edgeM - 1e-9 ? [{ of: [id], rule: 'fixing-off-board', roomM, limitM: edgeM }] : [];
  });
  const fit = fitBoard(board, space, { ...at, turnDeg: 0, standoffM }, clearanceM).faults.flatMap(
    (fault): Lack[] => {
      const { rule, of, value = 0, limit = 0 } = fault;
      return rule === 'space-too-shallow' ? [] : [{ of, rule, roomM: value, limitM: limit }];
    },
  );
  return [...fixed, ...fit].toSorted((a, b) => missing(b) - missing(a))[0] ?? null;
}
