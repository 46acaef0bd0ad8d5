import { type Box, ringOfBox } from '../../board/shape/point.ts';
import { rectangleOverPoints } from '../../board/shape/rectangle-over-points.ts';
import { gapM, roomInsideM } from '../../board/shape/ring-gap.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';
import { boltFor, boltHoleM } from '../../propose/laying/bolts.ts';
import { writtenRectangle } from './board-shape.ts';
import { spaceToKeep } from './place-boards.ts';
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
/** How many millimetres more than it needs a board is tried on, for what the shelf makes. */
const mostMoreMm = 20;

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
  const { 'hole-edge': edge, 'hole-corner': corner, 'web-good': good } = job.rules;
  const points = Object.entries(pointsOf(board)).flatMap(([id, point]) => {
    if (!fixed || !Object.hasOwn(fixed.given.fixings, id)) return [];
    const rimM = boltHoleM(job.parts, point) / 2;
    // At so much from both edges the corner is as far as is asked for.
    const leastM = Math.max(rimM + edge.value, (rimM + corner.value) / Math.SQRT2);
    return [{ id, xM: point.x, yM: point.y, leastM, goodM: Math.max(leastM, rimM + good.value) }];
  });
  const found = rectangleOverPoints(points, {
    leastWidthM: size.widthM,
    leastHeightM: size.heightM,
    stepM: job.shop.units === 'inch' ? inchM / 8 : millimetre,
    isFree: freeBoxes(job, board, spacerM),
  });
  if (!found) return null;
  const { minX, minY, maxX, maxY } = found.box;
  return { points: found.points, xM: minX, yM: minY, widthM: maxX - minX, heightM: maxY - minY, spacerM };
}

/** Whether a rectangle is inside the space, clear of its walls, of what stands out so far and of what has to be reached. */
function freeBoxes(job: Job, board: Board, spacerM: number): (box: Box) => boolean {
  const clearanceM = job.rules['space-clearance'].value;
  const { outline, obstacles } = spaceToKeep(board, ({ must }) => must);
  const inWay = obstacles.filter(({ toM }) => toM + clearanceM > spacerM + 1e-9);
  return (box) => {
    const ring = ringOfBox(box);
    return (
      roomInsideM(ring, outline) >= clearanceM - 1e-9 &&
      inWay.every((one) => gapM(ring, one.outline) >= clearanceM - 1e-9)
    );
  };
}
