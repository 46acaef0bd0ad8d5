import {
  boxesMeet,
  boxHolds,
  type PaperBox,
  type PaperSegment,
  segmentMeetsBox,
  segmentsCross,
} from '../paper.ts';

/** Something on the drawing that a label has to keep clear of: a part, a text, or a stroke. */
export type Obstacle =
  | { readonly id: string; readonly box: PaperBox }
  | { readonly id: string; readonly segment: PaperSegment };

/** Obstacles sorted by place, so that only those near a label are looked at. */
export interface ObstacleIndex {
  /** True where a box meets an obstacle, save that it may stand wholly inside the ones named. */
  meetsBox(box: PaperBox, within: readonly string[]): boolean;
  /** True where a leader passes through a box that is not one of its own. */
  leaderBlocked(leader: PaperSegment, own: readonly string[]): boolean;
  /** How many strokes, not its own, a leader crosses. */
  leaderCrossings(leader: PaperSegment, own: readonly string[]): number;
}

const cellMm = 10;
/** Cells are numbered column by column; no sheet has as many in one. */
const cellsInColumn = 65536;

/** An obstacle, and the question for which it was last counted: it may lie in several cells. */
interface Held {
  readonly obstacle: Obstacle;
  countedFor: number;
}

type Cells = ReadonlyMap<number, readonly Held[]>;

/** Sorts obstacles into cells of 10 mm. */
export function indexObstacles(obstacles: readonly Obstacle[]): ObstacleIndex {
  const cells = cellsOf(obstacles);
  let question = 0;
  return {
    meetsBox: (box, within) =>
      someNear(
        cells,
        box,
        ({ obstacle }) => meets(obstacle, box) && !(within.includes(obstacle.id) && standsIn(box, obstacle)),
      ),
    leaderBlocked: (leader, own) =>
      someNear(
        cells,
        segmentBox(leader),
        ({ obstacle }) =>
          'box' in obstacle && segmentMeetsBox(leader, obstacle.box) && !own.includes(obstacle.id),
      ),
    leaderCrossings: (leader, own) => {
      question += 1;
      let count = 0;
      someNear(cells, segmentBox(leader), (held) => {
        const { obstacle, countedFor } = held;
        if (countedFor === question || 'box' in obstacle || !segmentsCross(leader, obstacle.segment))
          return false;
        held.countedFor = question;
        if (!own.includes(obstacle.id)) count += 1;
        return false;
      });
      return count;
    },
  };
}

function cellsOf(obstacles: readonly Obstacle[]): Cells {
  const cells = new Map<number, Held[]>();
  for (const obstacle of obstacles) {
    const held: Held = { obstacle, countedFor: 0 };
    const { leftMm, topMm, rightMm, bottomMm } = extentOf(obstacle);
    for (let x = cellAt(leftMm); x <= cellAt(rightMm); x += 1)
      for (let y = cellAt(topMm); y <= cellAt(bottomMm); y += 1) {
        const cell = cells.get(x * cellsInColumn + y);
        if (cell) cell.push(held);
        else cells.set(x * cellsInColumn + y, [held]);
      }
  }
  return cells;
}

function cellAt(mm: number): number {
  return Math.floor(mm / cellMm);
}

/** True where one of the obstacles in the cells of a box is as asked for; one that lies in several may be asked twice. */
function someNear(cells: Cells, box: PaperBox, isAsked: (held: Held) => boolean): boolean {
  const [firstX, lastX] = [cellAt(box.leftMm), cellAt(box.rightMm)];
  const [firstY, lastY] = [cellAt(box.topMm), cellAt(box.bottomMm)];
  for (let x = firstX; x <= lastX; x += 1)
    for (let y = firstY; y <= lastY; y += 1) {
      const cell = cells.get(x * cellsInColumn + y);
      if (cell) for (const held of cell) if (isAsked(held)) return true;
    }
  return false;
}

function meets(obstacle: Obstacle, box: PaperBox): boolean {
  return 'box' in obstacle ? boxesMeet(obstacle.box, box) : segmentMeetsBox(obstacle.segment, box);
}

function standsIn(box: PaperBox, obstacle: Obstacle): boolean {
  return 'box' in obstacle && boxHolds(obstacle.box, box);
}

function extentOf(obstacle: Obstacle): PaperBox {
  return 'box' in obstacle ? obstacle.box : segmentBox(obstacle.segment);
}

function segmentBox({ from, to }: PaperSegment): PaperBox {
  return {
    leftMm: Math.min(from.xMm, to.xMm),
    topMm: Math.min(from.yMm, to.yMm),
    rightMm: Math.max(from.xMm, to.xMm),
    bottomMm: Math.max(from.yMm, to.yMm),
  };
}
