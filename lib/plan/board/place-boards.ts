import { type BoardPlace, type Lack, placeBoard } from '../../board/layout/board-place.ts';
import type { MountingSpace } from '../../board/layout/fit-in-space.ts';
import { type BoardRemark, length, phrase } from '../../board/remark.ts';
import { drawOutline } from '../../board/shape/outline.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';
import { type Figure, traced } from '../../model/trace.ts';
import { keptSpaceOf } from '../../propose/laying/mounting-space.ts';
import { PlanBook } from '../plan-book.ts';
import { boardItems } from './board-items.ts';
import { givenPlacement } from './board-layout.ts';
import { boardPose } from './board-pose.ts';
import { boardFixings } from './board-shape.ts';
import { remarksOnBoard } from './remark-words.ts';

/**
 * The job with a place for every board that has none: the first that is free. Where there is none, the board stands
 * where it lacks least, the book says what is in the way, and the rest of the job is planned all the same.
 */
export function placeBoards(job: Job, book: PlanBook): Job {
  if (job.boards.every(({ given }) => given.at)) return job;
  return { ...job, boards: job.boards.map((board) => (board.given.at ? board : placed(job, board, book))) };
}

function placed(job: Job, board: Board, book: PlanBook): Board {
  // What is wrong with the outline is told where the board is laid out.
  const { shape } = drawOutline(board.given.outline);
  if (!shape) return board;
  // Before it has a place, the fixings of a board come out in the axes of its space.
  const fixings = boardFixings(board, job.parts);
  const { 'hole-edge': leastM, 'web-good': goodM } = job.rules;
  const pointsWith = (roomM: number) =>
    fixings.map(({ id, xM, yM, part }) => ({ id, xM, yM, edgeM: (part.clearance ?? 0) / 2 + roomM }));
  const items = boardItems(job, board.id, new Map(), new PlanBook());
  const placements = items.flatMap(({ id }) => givenPlacement(job, id) ?? []);
  const loaded = { shape, thicknessM: board.sheet.thickness, items, placements };
  const { standoffM } = boardPose(board, fixings);
  const standing = { standoffM, clearanceM: job.rules['space-clearance'].value };
  // What is only wished to be reachable keeps no board out, and a web that is good, not wide, gives way before that.
  const wishes = [spaceToKeep(board, () => true), spaceToKeep(board, ({ must }) => must)].flatMap((space) =>
    [Math.max(leastM.value, goodM.value), leastM.value].map((roomM) => ({
      space,
      points: pointsWith(roomM),
    })),
  );
  const place = firstFree(wishes, ({ space, points }) => placeBoard(loaded, space, points, standing));
  if (!place) return board;
  tracePlace(board, place, book);
  if (place.lack && place.lack.roomM < 0)
    remarksOnBoard(job, board.id, [noPlace(board, place, place.lack)], () => ({ path: board.path }), book);
  return { ...board, place: { xM: place.xM, yM: place.yM } };
}

/** The first of the places that is free; where none is, that of the last wish, which asks least. */
function firstFree<W>(wishes: readonly W[], placeBy: (wish: W) => BoardPlace): BoardPlace | null {
  let place: BoardPlace | null = null;
  for (const wish of wishes) {
    place = placeBy(wish);
    if (!place.lack) return place;
  }
  return place;
}

/** The space with what has to stay reachable in it kept free as if it stood there. */
export function spaceToKeep(
  board: Board,
  isKept: (area: { readonly must: boolean }) => boolean,
): MountingSpace {
  return keptSpaceOf(board.space, isKept);
}

function tracePlace({ id, spaceId }: Board, place: BoardPlace, book: PlanBook): void {
  const about = {
    rule: 'board-place',
    formula: place.lack
      ? 'no place of the grid is free: the one that lacks least'
      : 'first place of the grid, row by row from the low corner, inside the space, clear of its obstacles and of what has to be reached, every fixing through the board, with a good web beside it where such a place is free',
    citation: 'plane geometry',
  };
  const inputs: readonly Figure[] = [
    ['space', spaceId, ''],
    ['grid', place.stepM, 'm'],
    ['places tried', place.tried, ''],
  ];
  book.trace(`boards.${id}.datumInSpace.xM`, traced(place.xM, 'm', { ...about, inputs }));
  book.trace(`boards.${id}.datumInSpace.yM`, traced(place.yM, 'm', { ...about, inputs }));
}

function noPlace({ id, spaceId }: Board, { tried }: BoardPlace, lack: Lack): BoardRemark {
  const [subject = id, obstacle] = lack.of;
  const what = subject === 'board' ? id : subject;
  const byM = length('overlap', -lack.roomM);
  const overlap =
    lack.rule === 'fixing-off-board'
      ? phrase`the fixing ${what} stands ${byM} off the board`
      : phrase`${what} reaches ${byM} past ${obstacle ?? 'the edge of the space'}`;
  return {
    rule: 'no-place-for-board',
    level: 'stop',
    of: [id, ...lack.of.filter((one) => one !== 'board')],
    message: phrase`${id} has no free place in ${spaceId}: where it lacks least of ${tried}, ${overlap}`,
    value: lack.roomM,
    limit: 0,
    unit: 'm',
    remedy:
      lack.rule === 'fixing-off-board'
        ? 'make the board larger, or choose another sound point'
        : phrase`make the board smaller by ${length('room-asked', lack.limitM - lack.roomM)}, or cut it out there`,
  };
}
