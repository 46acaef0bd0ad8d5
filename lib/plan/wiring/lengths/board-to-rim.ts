import type { Point } from '../../../board/shape/point.ts';
import { type ToSide, toSideM } from '../../../board/shape/ring-side.ts';
import type { Board, Run } from '../../../model/content/resolved-job.ts';
import { mountingSpace } from '../../board/board-pose.ts';
import { datumInSpace } from '../../board/board-shape.ts';

/**
 * How far a wire goes between the edge of its board and the rim of the space (m), where the tape of its way was held: from
 * where it leaves the board to where its way comes in, and if that is not told, to any point of that side of the space.
 * Null where the way does not reach the board's space. `exit`: on the board, from its datum.
 */
export function boardToRim(board: Board, route: Run['route'] | undefined, exit: Point): ToSide | null {
  const reaches = route?.reaches;
  if (reaches?.space !== board.spaceId) return null;
  const datum = datumInSpace(board);
  const from = { xM: datum.xM + exit.xM, yM: datum.yM + exit.yM };
  return toSideM(mountingSpace(board).outline, reaches.edge, from, reaches.at);
}
