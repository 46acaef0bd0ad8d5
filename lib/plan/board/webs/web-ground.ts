import { fitBoard, type LoadedBoard } from '../../../board/layout/fit-in-space.ts';
import type { BoardRemark } from '../../../board/remark.ts';
import { grownRectangle } from '../../../board/shape/grown-rectangle.ts';
import { pointToRing } from '../../../board/shape/point.ts';
import type { WebGround } from '../../../board/shape/web-ways-out.ts';
import type { Job } from '../../../model/content/resolved-job.ts';
import { tapeText } from '../../../model/quantity/tape-text.ts';
import { boardPose } from '../board-pose.ts';
import type { BoardFixing } from '../board-shape.ts';
import type { LaidBoard } from '../laid-board.ts';
import { spaceToKeep } from '../place-boards.ts';
import { isOnOneHeight, liftWhere, writtenBolts } from '../raising/lifted-clear.ts';

/** What the space of a board lets move where a web of it is too narrow: itself, its sides, the points it is fixed at. */
export function webGround(job: Job, laid: LaidBoard, fixings: readonly BoardFixing[]): WebGround {
  const { board, shape, items, placements } = laid;
  const pose = boardPose(board, fixings);
  const space = spaceToKeep(board, ({ must }) => must);
  const loaded: LoadedBoard = { shape, thicknessM: board.sheet.thickness, items, placements };
  const clearanceM = job.rules['space-clearance'].value;
  const faultsOf = (one: LoadedBoard, at = pose) => fitBoard(one, space, at, clearanceM).faults;
  const isFree = (one: LoadedBoard, at = pose) => noneNewIn(faultsOf(loaded), faultsOf(one, at));
  return {
    board: board.id,
    space: board.spaceId,
    points: new Map(
      fixings.map(({ id, point, xM, yM }) => {
        const at = { xM: xM + pose.xM, yM: yM + pose.yM };
        return [id, { point, toSpaceEdgeM: pointToRing(at, space.outline) }] as const;
      }),
    ),
    isFreeMoved: ({ xM, yM }) => isFree(loaded, { ...pose, xM: pose.xM + xM, yM: pose.yM + yM }),
    isFreeGrown: (growth) => {
      const grown = grownRectangle(shape, growth);
      return grown !== null && isFree({ ...loaded, shape: grown });
    },
    spacerToGrow: (growth) => {
      const grown = grownRectangle(shape, growth);
      if (!grown || !isOnOneHeight(board)) return null;
      const [larger, before] = [{ ...loaded, shape: grown }, faultsOf(loaded)];
      const lift = liftWhere(job, board, pose.standoffM, (standoffM) => {
        const after = faultsOf(larger, { ...pose, standoffM });
        return after.every(({ rule }) => rule !== 'obstacle-in-the-way') && noneNewIn(before, after);
      });
      // What asks for another sheet or another bolt as well is no way by itself.
      const isAlone = lift?.sheet.id === board.sheetId && writtenBolts(job, board, lift).length === 0;
      return lift && isAlone ? tapeText(lift.heightM, 'millimetre') : null;
    },
  };
}

/** True where all faults stood there before, none of them with less room. */
function noneNewIn(before: readonly BoardRemark[], after: readonly BoardRemark[]): boolean {
  return after.every(({ rule, of, value = 0 }) =>
    before.some(
      (one) => one.rule === rule && one.of.join() === of.join() && (one.value ?? 0) <= value + 1e-9,
    ),
  );
}
