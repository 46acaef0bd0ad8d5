import { sides } from '../../layout/item.ts';
import type { Point } from '../../shape/point.ts';
import { DressAhead } from './dress-ahead.ts';
import { type DressGrid, firstAbove, firstFrom, shutBit } from './dress-grid.ts';
import { DressStates } from './dress-states.ts';
import type { DressGoal, DressTask } from './dress-task.ts';
import { type DressEnd, DressWalk } from './dress-walk.ts';

/**
 * The cheapest way of one wire along the lines of a grid. Memory is kept from one search to the next.
 */
export class DressSearch {
  readonly #ahead = new DressAhead();
  readonly #states = new DressStates();

  /** The points of the way between the two stubs; null where there is none. */
  find(task: DressTask): readonly Point[] | null {
    const { grid, start, goal } = task;
    const edgeLines = edgeLinesOf(grid, goal);
    if (!this.#ahead.look(grid, goalNodes(grid, goal, edgeLines), start.node)) return null;
    this.#states.clear(grid.width * grid.height * 4);
    const end = new DressWalk(task, edgeLines, this.#ahead, this.#states).end();
    return end && this.#trace(task, end);
  }

  #trace({ grid, start, goal }: DressTask, { from, node }: DressEnd): readonly Point[] {
    const pointOf = (at: number): Point => {
      const column = Math.floor(at / grid.height);
      return { xM: grid.xs[column] ?? 0, yM: grid.ys[at - column * grid.height] ?? 0 };
    };
    const states: number[] = [];
    for (let state = from; state >= 0; state = this.#states.before[state] ?? -1) states.unshift(state);
    const level = (way: number): boolean => (way & 1) === 0;
    const points = [pointOf(start.node)];
    for (const [at, wayOn] of [
      ...states.map((state) => [state >> 2, state & 3] as const),
      [node, goal.way] as const,
    ]) {
      const [before, point] = [points.at(-1), pointOf(at)];
      // The first corner of a jog, which goes on the way that it came.
      if (before)
        points.push(level(wayOn) ? { xM: before.xM, yM: point.yM } : { xM: point.xM, yM: before.yM });
      points.push(point);
    }
    if ('node' in goal) return [...points, pointOf(goal.node)];
    const column = Math.floor(node / grid.height);
    const edgeM = goal.edgesM[level(goal.way) ? node - column * grid.height : column] ?? 0;
    const end = pointOf(node);
    return [...points, level(goal.way) ? { xM: edgeM, yM: end.yM } : { xM: end.xM, yM: edgeM }];
  }
}

/** By line across the way out: the piece in which it comes to the edge, by its lower line; -1 where in none. */
function edgeLinesOf({ xs, ys }: DressGrid, goal: DressGoal): Int16Array {
  if ('node' in goal) return new Int16Array(0);
  const lines = (goal.way & 1) === 0 ? xs : ys;
  const last = lines.length - 1;
  return Int16Array.from(goal.edgesM, (edgeM) => {
    if (Number.isNaN(edgeM)) return -1;
    const line = (goal.way < 2 ? firstFrom(lines, edgeM) : firstAbove(lines, edgeM)) - 1;
    return line < last ? line : -1;
  });
}

/** The nodes before an end, with the crossings between. */
function goalNodes(
  { height, pieces, crossed }: DressGrid,
  goal: DressGoal,
  edgeLines: Int16Array,
): (readonly [number, number])[] {
  if ('node' in goal) return [[goal.node, 0]];
  const axis = (goal.way & 1) as 0 | 1;
  const found: (readonly [number, number])[] = [];
  for (let across = 0; across < edgeLines.length; across += 1) {
    const line = edgeLines[across] ?? -1;
    const piece = axis === 0 ? line * height + across : across * height + line;
    if (line < 0 || ((pieces[axis][piece] ?? 0) & shutBit) !== 0) continue;
    const node = goal.way < 2 ? piece : axis === 0 ? piece + height : piece + 1;
    found.push([node, crossed[axis][piece] ?? 0]);
  }
  return found;
}

export const wayOf = (side: (typeof sides)[number]): number => sides.indexOf(side);
