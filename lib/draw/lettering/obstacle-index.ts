import {
  boxesMeet,
  boxHolds,
  boxRound,
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

/** Sorts obstacles into cells of 10 mm. */
export function indexObstacles(obstacles: readonly Obstacle[]): ObstacleIndex {
  const cells = new Map<string, Obstacle[]>();
  for (const obstacle of obstacles)
    for (const key of cellsOf(extentOf(obstacle))) {
      const held = cells.get(key);
      if (held) held.push(obstacle);
      else cells.set(key, [obstacle]);
    }
  const near = (box: PaperBox, own: readonly string[] = []): Set<Obstacle> => {
    const found = new Set<Obstacle>();
    for (const key of cellsOf(box))
      for (const obstacle of cells.get(key) ?? []) if (!own.includes(obstacle.id)) found.add(obstacle);
    return found;
  };
  return {
    meetsBox: (box, within) =>
      [...near(box)].some(
        (obstacle) => meets(obstacle, box) && !(within.includes(obstacle.id) && standsIn(box, obstacle)),
      ),
    leaderBlocked: (leader, own) =>
      [...near(segmentBox(leader), own)].some(
        (obstacle) => 'box' in obstacle && segmentMeetsBox(leader, obstacle.box),
      ),
    leaderCrossings: (leader, own) =>
      [...near(segmentBox(leader), own)].filter(
        (obstacle) => 'segment' in obstacle && segmentsCross(leader, obstacle.segment),
      ).length,
  };
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

function segmentBox(segment: PaperSegment): PaperBox {
  return boxRound([segment.from, segment.to]);
}

function cellsOf(box: PaperBox): string[] {
  const keys: string[] = [];
  for (let x = Math.floor(box.leftMm / cellMm); x <= Math.floor(box.rightMm / cellMm); x += 1)
    for (let y = Math.floor(box.topMm / cellMm); y <= Math.floor(box.bottomMm / cellMm); y += 1)
      keys.push(`${x} ${y}`);
  return keys;
}
