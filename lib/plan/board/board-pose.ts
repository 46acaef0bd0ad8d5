import type { MountingSpace, Pose } from '../../board/layout/fit-in-space.ts';
import { sides } from '../../board/layout/item.ts';
import type { Wall } from '../../board/layout/walls.ts';
import type { Ring } from '../../board/shape/point.ts';
import type { Board } from '../../model/content/resolved-job.ts';
import { mountingSpaceOf } from '../../propose/laying/mounting-space.ts';
import { type BoardFixing, datumInSpace } from './board-shape.ts';

/** The mounting space of a board, with its obstacles as boxes that stand out from its back plane. Metres. */
export function mountingSpace({ space }: Board): MountingSpace {
  return mountingSpaceOf(space);
}

/** How a board stands in its space: on the highest spacer of its fixings. */
export function boardPose(board: Board, fixings: readonly BoardFixing[]): Pose {
  const standoffM = Math.max(0, ...fixings.map(({ spacerM }) => spacerM));
  return { ...datumInSpace(board), turnDeg: 0, standoffM };
}

/**
 * What stands before the parts of a board once it is in its space, in the axes of the board: the walls of the space but
 * for its open edges, and its obstacles. None before the board has its place.
 */
export function wallsBefore(board: Board, fixings: readonly BoardFixing[]): Wall[] {
  if (!board.given.at && !board.place) return [];
  const { xM, yM, standoffM } = boardPose(board, fixings);
  const faceM = standoffM + board.sheet.thickness;
  const onBoard = (ring: Ring): Ring => ring.map((p) => ({ xM: p.xM - xM, yM: p.yM - yM }));
  const { outline, obstacles } = mountingSpace(board);
  const closed = sides.filter((side) => board.space.bounds[side] !== 'open');
  return [
    ...closed.map((side): Wall => {
      const certain = board.space.bounds[side] === 'wall';
      return { ring: onBoard(outline), sides: [side], toM: Number.POSITIVE_INFINITY, certain };
    }),
    ...obstacles.map((one): Wall => {
      return { ring: onBoard(one.outline), sides, toM: one.toM - faceM, certain: true };
    }),
  ];
}
