import { roomToGrow } from '../../board/layout/room-to-grow.ts';
import { boxOf } from '../../board/shape/point.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import { boardPose } from '../../plan/board/board-pose.ts';
import { boardFixings } from '../../plan/board/board-shape.ts';
import { spaceToKeep } from '../../plan/board/place-boards.ts';

/** What a board must gain on one side to be told as larger, metres: no part finds another place in less. */
const worthM = 0.01;

/**
 * The largest board that its space has where it lies, clear of what stands there and of what has to be reached, with the
 * lines to write; that there is none, or no more than the space where that is no rectangle. `at:` is told up, the size down.
 */
export function largerBoardText(job: Job, { id, outline, datumInSpace }: PlanBoard): string {
  const board = job.boards.find((one) => one.id === id);
  if (!board) return '';
  const own = boxOf(outline);
  const { standoffM } = boardPose(board, boardFixings(board, job.parts));
  const box = {
    minX: datumInSpace.xM + own.minX,
    minY: datumInSpace.yM + own.minY,
    maxX: datumInSpace.xM + own.maxX,
    maxY: datumInSpace.yM + own.maxY,
  };
  const clearanceM = job.rules['space-clearance'].value;
  const room = roomToGrow(
    spaceToKeep(board, () => true),
    { box, standoffM, clearanceM },
  );
  if (!room) return '';
  const { units } = job.shop;
  const stepM = units === 'inch' ? 0.0254 / 8 : 0.001;
  const up = (lengthM: number) => Math.ceil(lengthM / stepM - 1e-6) * stepM;
  const down = (lengthM: number) => Math.floor(lengthM / stepM + 1e-6) * stepM;
  const [xM, yM] = [up(room.minX), up(room.minY)];
  const [widthM, heightM] = [down(room.maxX - xM), down(room.maxY - yM)];
  const [ownWidthM, ownHeightM] = [own.maxX - own.minX, own.maxY - own.minY];
  if (widthM < ownWidthM + worthM && heightM < ownHeightM + worthM)
    return `no larger board fits where it lies in ${board.spaceId}; `;
  const text = (lengthM: number) => tapeText(lengthM, units);
  return `make ${id} larger, up to at: { x: ${text(xM)}, y: ${text(yM)} } with outline: { rectangle: { width: ${text(widthM)}, height: ${text(heightM)} } }, which is clear of all that is told of ${board.spaceId}; or `;
}
