import { fitBoard, type LoadedBoard } from '../../../board/layout/fit-in-space.ts';
import type { Side } from '../../../board/layout/item.ts';
import type { BoardRemark } from '../../../board/remark.ts';
import type { BoardShape } from '../../../board/shape/outline.ts';
import { type Box, boxOf, pointToRing, ringOfBox } from '../../../board/shape/point.ts';
import { regionOf } from '../../../board/shape/region.ts';
import type { WebGround } from '../../../board/shape/web-ways-out.ts';
import type { Job } from '../../../model/content/resolved-job.ts';
import { boardPose, mountingSpace } from '../board-pose.ts';
import type { BoardFixing } from '../board-shape.ts';
import type { LaidBoard } from '../laid-board.ts';
import { spaceToKeep } from '../place-boards.ts';

/** What the space of a board lets move where a web of it is too narrow: itself, its sides, the points it is fixed at. */
export function webGround(job: Job, laid: LaidBoard, fixings: readonly BoardFixing[]): WebGround {
  const { board, shape, items, placements } = laid;
  const pose = boardPose(board, fixings);
  const { outline } = mountingSpace(board);
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
        return [id, { point, toSpaceEdgeM: pointToRing(at, outline) }] as const;
      }),
    ),
    isFreeMoved: ({ xM, yM }) => isFree(loaded, { ...pose, xM: pose.xM + xM, yM: pose.yM + yM }),
    isFreeGrown: (side, byM) => {
      const grown = grownRectangle(shape, side, byM);
      return grown !== null && isFree({ ...loaded, shape: grown });
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

/** A rectangle with one side further out; null for any other outline. */
function grownRectangle(shape: BoardShape, side: Side, byM: number): BoardShape | null {
  const { outline } = shape;
  const box = boxOf(outline);
  const isRectangle =
    outline.length === 4 &&
    outline.every(
      ({ xM, yM, bulge }) =>
        bulge === 0 && [box.minX, box.maxX].includes(xM) && [box.minY, box.maxY].includes(yM),
    );
  if (!isRectangle) return null;
  const openings = shape.region[0]?.openings ?? [];
  const [piece] = regionOf(ringOfBox(withSide(box, side, byM)));
  return piece ? { ...shape, region: [{ ...piece, openings }] } : null;
}

function withSide({ minX, minY, maxX, maxY }: Box, side: Side, byM: number): Box {
  return {
    minX: minX - (side === 'left' ? byM : 0),
    minY: minY - (side === 'bottom' ? byM : 0),
    maxX: maxX + (side === 'right' ? byM : 0),
    maxY: maxY + (side === 'top' ? byM : 0),
  };
}
