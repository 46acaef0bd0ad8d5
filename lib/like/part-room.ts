import { type BoardLines, boardLinesOf } from '../board/layout/board-lines.ts';
import { standsFree } from '../board/layout/free-spots.ts';
import { type Body, roomInFront } from '../board/layout/item.ts';
import { planGapM, sameHeight } from '../board/layout/placed.ts';
import type { Box, Point } from '../board/shape/point.ts';
import { asTurned, type PastBoard, type PastItem } from './past-board.ts';
import type { WishedPart } from './wish.ts';

/** Holes this near to each other are the same hole: a pencil line, metres (common practice, no source). */
const sameHoleM = 0.0005;
/** Steps between places that are tried for a part, metres. */
const stepM = 0.01;

/** A part where it would stand. */
export interface PlacedPart {
  readonly at: Box;
  readonly turnDeg: number;
  readonly heightM: number;
  readonly raisedM: number;
}

/** What stands on a board while parts are put in the place of others. */
export interface Surface {
  readonly boardLines: BoardLines;
  readonly partGapM: number;
  /** Parts that stay, or that stand there until another takes their place. */
  readonly items: readonly PastItem[];
}

/** The surface of a past board, the heads of its fixings in the way of parts. */
export function surfaceOf(board: PastBoard, items: readonly PastItem[], partGapM: number): Surface {
  const shape = { outline: board.outline, cutouts: board.cutouts, holes: [], region: [] };
  const heads = board.fixings.map((one) => ({ ...one, radiusM: headM }));
  return { boardLines: boardLinesOf(shape, heads), partGapM, items };
}

/** Half the head or washer of a fixing: that of an M6, metres (common practice, no source). */
const headM = 0.006;

function bodyOf({ at, raisedM, heightM }: PlacedPart): Body {
  return { ...at, minZ: raisedM, maxZ: raisedM + heightM };
}

/**
 * Where a part stands in the place of another: turned as that is, or the other way round; within its foot, else grown
 * over it as far as the board, the others and their rooms let it. Null where it does not go in there.
 */
export function placeOfOther(part: WishedPart, before: PastItem, surface: Surface): PlacedPart | null {
  for (const turnDeg of [before.turnDeg, (before.turnDeg + 180) % 360]) {
    const size = asTurned(part, turnDeg);
    for (const corner of cornersIn(before.at, size)) {
      const at = { ...corner, maxX: corner.minX + size.xM, maxY: corner.minY + size.yM };
      const placed = { at, turnDeg, heightM: part.heightM, raisedM: before.raisedM };
      if (goesIn(placed, before, surface)) return placed;
    }
  }
  return null;
}

/** Lower left corners of a foot of some size at the middle of another, then at its corners. */
function cornersIn(
  { minX, minY, maxX, maxY }: Box,
  { xM, yM }: Point,
): { readonly minX: number; readonly minY: number }[] {
  const [left, right, low, high] = [minX, maxX - xM, minY, maxY - yM];
  return [
    { minX: (left + right) / 2, minY: (low + high) / 2 },
    ...[left, right].flatMap((x) => [low, high].map((y) => ({ minX: x, minY: y }))),
  ];
}

function goesIn(placed: PlacedPart, before: PastItem, { boardLines, partGapM, items }: Surface): boolean {
  const [body, old] = [bodyOf(placed), bodyOf(before)];
  const isWithin =
    body.minX >= old.minX - 1e-9 &&
    body.minY >= old.minY - 1e-9 &&
    body.maxX <= old.maxX + 1e-9 &&
    body.maxY <= old.maxY + 1e-9;
  if (isWithin && body.maxZ <= old.maxZ + 1e-9) return true;
  if (!isWithin && !standsFree(boardLines, placed.at, placed.raisedM > 0)) return false;
  return items.filter(({ id }) => id !== before.id).every((other) => leavesRoom(body, old, other, partGapM));
}

/** Whether a part leaves another its gap and its rooms, where the one that stood there did. */
function leavesRoom(body: Body, old: Body | null, other: PastItem, partGapM: number): boolean {
  const its = bodyOf(other);
  const takes = (mine: Body): boolean => sameHeight(mine, its) && planGapM(mine, its) < partGapM - 1e-9;
  if (takes(body) && !(old && takes(old) && planGapM(body, its) >= planGapM(old, its) - 1e-9)) return false;
  return other.keepClear.every(({ side, depthM }) => {
    const room = roomInFront(its, side, depthM);
    const inRoom = (mine: Body): boolean => sameHeight(mine, room) && planGapM(mine, room) < -1e-9;
    return !inRoom(body) || (old !== null && inRoom(old));
  });
}

/** A free spot for a part, row by row from the low corner, lying on the board; null where there is none. */
export function freeSpot(part: WishedPart, { boardLines, partGapM, items }: Surface): PlacedPart | null {
  const { box } = boardLines;
  for (const turnDeg of [0, 90]) {
    const { xM, yM } = asTurned(part, turnDeg);
    for (let minY = box.minY; minY + yM <= box.maxY + 1e-9; minY += stepM)
      for (let minX = box.minX; minX + xM <= box.maxX + 1e-9; minX += stepM) {
        const at = { minX, minY, maxX: minX + xM, maxY: minY + yM };
        const placed = { at, turnDeg, heightM: part.heightM, raisedM: 0 };
        const body = bodyOf(placed);
        if (
          items.every((other) => leavesRoom(body, null, other, partGapM)) &&
          standsFree(boardLines, at, false)
        )
          return placed;
      }
  }
  return null;
}

/** How many holes of a part are not there yet, where it stands in the place of another. */
export function holesToDrill(part: WishedPart, placed: PlacedPart, there: readonly Point[]): number {
  return part.holes
    .map((hole) => onBoard(part, placed, hole))
    .filter((hole) => !there.some((one) => Math.hypot(one.xM - hole.xM, one.yM - hole.yM) <= sameHoleM))
    .length;
}

/** A hole of a part on the board. */
function onBoard(
  { widthM: w, depthM: d }: WishedPart,
  { at: { minX, minY }, turnDeg }: PlacedPart,
  { xM, yM }: Point,
): Point {
  const own: Readonly<Record<number, Point>> = {
    0: { xM, yM },
    90: { xM: d - yM, yM: xM },
    180: { xM: w - xM, yM: d - yM },
    270: { xM: yM, yM: w - xM },
  };
  const { xM: x, yM: y } = own[turnDeg] ?? { xM, yM };
  return { xM: minX + x, yM: minY + y };
}
