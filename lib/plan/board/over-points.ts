import { rectangleOverPoints } from '../../board/shape/rectangle-over-points.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';
import { freeInSpace, mostMoreMm, roomAtPoint } from '../../propose/laying/board-room.ts';
import { boltFor } from '../../propose/laying/bolts.ts';
import { writtenRectangle } from './board-shape.ts';
import { standsAt } from './raising/spacer-stacks.ts';

/** A place and a size of a board at which sound points of its space hold it. Metres, from the datum of the space. */
export interface BoardOverPoints {
  readonly points: readonly string[];
  readonly xM: number;
  readonly yM: number;
  readonly widthM: number;
  readonly heightM: number;
  /** How high it stands on spacers; 0: on none. */
  readonly spacerM: number;
}

const millimetre = 0.001;
const inchM = 0.0254;

/**
 * The least rectangle that takes the sound points of the space with nothing behind, at least as large as the one that is
 * written: clear of walls, of what stands out and of what has to be reached, on the lowest spacer that the shelf makes
 * and that lifts it over the more of the points. `tallestM` is how far what stands on the board reaches above its face.
 * Null where none is free, or the board is no plain rectangle.
 */
export function boardOverPoints(job: Job, board: Board, tallestM: number): BoardOverPoints | null {
  const size = writtenRectangle(board);
  if (!size) return null;
  const clearanceM = job.rules['space-clearance'].value;
  const mostM = board.space.depth - board.sheet.thickness - tallestM - clearanceM;
  let best: BoardOverPoints | null = null;
  for (const needM of liftsOf(board, clearanceM, mostM)) {
    const spacerM = madeLift(job, board, needM, mostM);
    if (spacerM === null) continue;
    const found = overPointsAt(job, board, size, spacerM);
    if (found && (!best || found.points.length > best.points.length)) best = found;
  }
  return best;
}

/** How high the board would have to stand to pass over what stands out, the lowest first; as written before that. */
function liftsOf({ given, space }: Board, clearanceM: number, mostM: number): readonly number[] {
  const writtenM = given.spacer ?? 0;
  const over = Object.values(space.obstacles).map((one) => one['stands-out'] + clearanceM);
  return [...new Set([writtenM, ...over])]
    .filter((liftM) => liftM >= writtenM - 1e-9 && liftM <= mostM + 1e-9)
    .toSorted((one, other) => one - other);
}

/** The least height in whole millimetres from one on at which the shelf carries a board at the points; null for none. */
function madeLift(job: Job, board: Board, needM: number, mostM: number): number | null {
  if (needM <= (board.given.spacer ?? 0) + 1e-9) return needM;
  const fromMm = Math.ceil(needM / millimetre - 1e-6);
  for (let mm = fromMm; mm <= fromMm + mostMoreMm && mm * millimetre <= mostM + 1e-9; mm += 1) {
    const fixed = fixedAt(job, board, mm * millimetre);
    if (fixed && standsAt(job, fixed, mm * millimetre)) return mm * millimetre;
  }
  return null;
}

/** The board with the bolt that a spacer of one height asks for at each point that one holds in; null where none does. */
function fixedAt(job: Job, board: Board, spacerM: number): Board | null {
  const fixings = Object.entries(pointsOf(board)).flatMap(([name, point]) => {
    const fixing = boltFor(job, { sheet: board.given.sheet, spacer: spacerM }, point);
    return fixing === null ? [] : [[name, { point: name, fixing }] as const];
  });
  return fixings.length === 0
    ? null
    : { ...board, given: { ...board.given, fixings: Object.fromEntries(fixings) } };
}

/** The points of a space that nothing lies behind. */
function pointsOf({ space }: Board): Board['space']['sound-points'] {
  return Object.fromEntries(
    Object.entries(space['sound-points']).filter(([, { behind }]) => behind === 'nothing'),
  );
}

function overPointsAt(
  job: Job,
  board: Board,
  size: Pick<BoardOverPoints, 'widthM' | 'heightM'>,
  spacerM: number,
): BoardOverPoints | null {
  const fixed = fixedAt(job, board, spacerM);
  const points = Object.entries(pointsOf(board)).flatMap(([id, point]) => {
    if (!fixed || !Object.hasOwn(fixed.given.fixings, id)) return [];
    return [{ id, xM: point.x, yM: point.y, ...roomAtPoint(job, point) }];
  });
  const found = rectangleOverPoints(points, {
    leastWidthM: size.widthM,
    leastHeightM: size.heightM,
    stepM: job.shop.units === 'inch' ? inchM / 8 : millimetre,
    isFree: freeInSpace(job.rules, board.space, spacerM),
  });
  if (!found) return null;
  const { minX, minY, maxX, maxY } = found.box;
  return { points: found.points, xM: minX, yM: minY, widthM: maxX - minX, heightM: maxY - minY, spacerM };
}
