import { sides } from '../../layout/item.ts';
import type { Point } from '../../shape/point.ts';
import { CheapestFirst } from '../queue.ts';
import { DressAhead } from './dress-ahead.ts';
import type { DressGrid } from './dress-grid.ts';

/** What a way of a wire costs, in metres of thin wire. */
export interface WayPrice {
  /** For each metre. */
  readonly metre: number;
  readonly bendM: number;
  readonly crossingM: number;
  /** For each metre beside what it should keep away from, at no distance. */
  readonly nearness: number;
  /** For each metre away from the other wire of its pair. */
  readonly stray: number;
  /** For leaving apart from the wires of its run. */
  readonly bundleM: number;
}

/** Where a way begins: at a crossing of lines, straight wire behind it (m). */
export interface DressStart {
  readonly node: number;
  readonly way: number;
  readonly stubM: number;
}

/** Where it ends: in a terminal, or over the edge wherever its line comes to it (m, NaN: nowhere), which may cost something besides. */
export type DressGoal =
  | { readonly node: number; readonly way: number; readonly stubM: number }
  | { readonly way: number; readonly edgesM: Float64Array; readonly tollsM: Float64Array };

export interface DressTask {
  readonly grid: DressGrid;
  readonly start: DressStart;
  readonly goal: DressGoal;
  readonly bendRadiusM: number;
  readonly price: WayPrice;
}

/**
 * The cheapest way of one wire along the lines of a grid: Dijkstra's algorithm (1959) over crossings of lines and
 * directions, with the least distance and the least crossings that are left as a lower bound (A*, Hart, Nilsson and
 * Raphael 1968). States are those in which the wire may be bent: behind a bend it is led on at once until it may be bent
 * again. Memory is kept from one search to the next.
 */
export class DressSearch {
  readonly #queue = new CheapestFirst();
  readonly #ahead = new DressAhead();
  #cost = new Float64Array(0);
  #before = new Int32Array(0);
  #bound: (node: number, way: number) => number = () => 0;
  #finishState = 0;
  /** The ways and the lines that the wire begins on, and on which it ends in a terminal: -1 where it leaves the board. */
  #startWay = 0;
  #startLine = 0;
  #goalWay = 0;
  #goalLine = -1;
  /** The cheapest end so far, the state that leads to it (-1 is the start, -2 none), and where its last stretch begins. */
  #end: readonly [cost: number, from: number, node: number] = [Infinity, -2, -1];

  /** The points of the way between the two stubs; null where there is none. */
  find(task: DressTask): readonly Point[] | null {
    const { grid, start, goal, bendRadiusM } = task;
    const states = grid.width * grid.height * 4;
    if (this.#cost.length < states) {
      this.#cost = new Float64Array(2 * states);
      this.#before = new Int32Array(2 * states);
    }
    if (!this.#ahead.look(grid, goalNodes(grid, goal), start.node)) return null;
    this.#bound = boundFor(task);
    [this.#startWay, this.#goalWay] = [start.way, goal.way];
    this.#startLine = lineThrough(grid, start.node, start.way);
    this.#goalLine = 'node' in goal ? lineThrough(grid, goal.node, goal.way) : -1;
    this.#cost.fill(Infinity, 0, states);
    this.#queue.clear();
    this.#end = [Infinity, -2, -1];
    this.#finishState = states;
    this.#lead(task, -1, start.node, start.way, 0, start.stubM, bendRadiusM);
    for (let state = this.#queue.pop(); state !== undefined && state !== states; state = this.#queue.pop())
      this.#expand(task, state);
    return this.#end[1] < -1 ? null : this.#trace(task);
  }

  /** Straight on to the next crossing of lines, or round a bend. */
  #expand(task: DressTask, state: number): void {
    const { bendRadiusM, price } = task;
    const [node, way] = [state >> 2, state & 3];
    const cost = this.#cost[state] ?? 0;
    this.#lead(task, state, node, way, cost, 2 * bendRadiusM, 0);
    for (const turn of [1, 3]) {
      // Either bend takes its radius of the straight wire between them.
      this.#lead(task, state, node, (way + turn) & 3, cost + price.bendM, 0, 2 * bendRadiusM);
      this.#jog(task, state, (way + turn) & 3);
    }
  }

  /**
   * On beside the line that a wire came on, nearer than two bends need: they turn opposite ways, and are eased over the
   * straight wire before and behind them. From the line of its start to any, and from any to that of its goal.
   */
  #jog(task: DressTask, state: number, aside: number): void {
    const { grid, bendRadiusM, price } = task;
    const way = state & 3;
    const node = state >> 2;
    const axis = (aside & 1) as 0 | 1;
    const lines = axis === 0 ? grid.xs : grid.ys;
    const column = Math.floor(node / grid.height);
    const from = axis === 0 ? column : node - column * grid.height;
    const isFree = way === this.#startWay && from === this.#startLine;
    const toward = way === this.#goalWay ? this.#goalLine : -1;
    if (!isFree && toward < 0) return;
    const up = aside < 2;
    const [fromM, mostM] = [lines[from] ?? 0, 2 * bendRadiusM - 1e-9];
    const toGoalM = toward < 0 ? Infinity : ((lines[toward] ?? 0) - fromM) * (up ? 1 : -1);
    if (!isFree && (toGoalM <= 0 || toGoalM >= mostM)) return;
    const stride = axis === 0 ? grid.height : 1;
    const byM = up ? 1 : -1;
    let [here, cost] = [node, (this.#cost[state] ?? 0) + 2 * price.bendM];
    for (let line = from; up ? line + 1 < lines.length : line > 0; ) {
      const piece = up ? here : here - stride;
      if (grid.shut[axis][piece] === 1) return;
      const next = line + byM;
      if (Math.abs((lines[next] ?? 0) - fromM) >= mostM) return;
      cost += pieceCost(task, axis, piece, Math.abs((lines[next] ?? 0) - (lines[line] ?? 0)));
      here += up ? stride : -stride;
      line = next;
      if (isFree || line === toward) this.#lead(task, state, here, way, cost, 0, 2 * bendRadiusM);
      if (!isFree && line === toward) return;
    }
  }

  /** Leads a wire straight from a node until it may be bent there: `runM` straight wire it has, `needM` it needs. */
  #lead(
    task: DressTask,
    from: number,
    node: number,
    way: number,
    cost: number,
    runM: number,
    needM: number,
  ): void {
    const { grid, goal, bendRadiusM, price } = task;
    const axis = (way & 1) as 0 | 1;
    const lines = axis === 0 ? grid.xs : grid.ys;
    const [shut, crossed, near, toll, stray] = [
      grid.shut[axis],
      grid.crossed[axis],
      grid.near[axis],
      grid.toll[axis],
      grid.stray[axis],
    ];
    const stride = axis === 0 ? grid.height : 1;
    const column = Math.floor(node / grid.height);
    let line = axis === 0 ? column : node - column * grid.height;
    const up = way < 2;
    const isGoal = goal.way === way;
    const across = axis === 0 ? node - column * grid.height : column;
    const isExit = isGoal && 'edgesM' in goal;
    const edgeM = isExit ? (goal.edgesM[across] ?? Number.NaN) : Number.NaN;
    let [here, sum, hasM] = [node, cost, runM];
    for (let first = true; ; first = false) {
      if (isGoal && 'node' in goal && goal.node === here && hasM + goal.stubM >= bendRadiusM - 1e-9)
        this.#finish(sum, from, node);
      if (!first && hasM >= needM - 1e-9) break;
      // With no way to go for a first bend, the wire may be bent where it stands.
      if (first && from < 0 && hasM >= needM - 1e-9) break;
      if (up ? line + 1 >= lines.length : line <= 0) return;
      const piece = up ? here : here - stride;
      if (shut[piece] === 1) return;
      const [lowM, highM] = up
        ? [lines[line] ?? 0, lines[line + 1] ?? 0]
        : [lines[line - 1] ?? 0, lines[line] ?? 0];
      const ends = up ? edgeM > lowM && edgeM <= highM : edgeM >= lowM && edgeM < highM;
      const lengthM = ends ? (up ? edgeM - lowM : highM - edgeM) : highM - lowM;
      sum +=
        lengthM * (price.metre + price.nearness * (near[piece] ?? 0) + price.stray * (stray[piece] ?? 0)) +
        ((crossed[piece] ?? 0) + (toll[piece] ?? 0)) * price.crossingM;
      hasM += lengthM;
      if (ends) {
        const tollM = isExit ? (goal.tollsM[across] ?? 0) : 0;
        if (hasM >= bendRadiusM - 1e-9) this.#finish(sum + tollM, from, node);
        return;
      }
      here += up ? stride : -stride;
      line += up ? 1 : -1;
    }
    const there = here * 4 + way;
    if (!(sum < (this.#cost[there] ?? Infinity) - 1e-12)) return;
    this.#cost[there] = sum;
    this.#before[there] = from;
    this.#queue.push(there, sum + this.#bound(here, way) + price.crossingM * this.#ahead.at(here));
  }

  #finish(cost: number, from: number, node: number): void {
    if (cost >= this.#end[0]) return;
    this.#end = [cost, from, node];
    this.#queue.push(this.#finishState, cost);
  }

  #trace({ grid, start, goal }: DressTask): readonly Point[] {
    const pointOf = (node: number): Point => {
      const column = Math.floor(node / grid.height);
      return { xM: grid.xs[column] ?? 0, yM: grid.ys[node - column * grid.height] ?? 0 };
    };
    const [, last, node] = this.#end;
    const states: number[] = [];
    for (let state = last; state >= 0; state = this.#before[state] ?? -1) states.unshift(state);
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

/** What a piece of a line costs, so long (m). */
function pieceCost({ grid, price }: DressTask, axis: 0 | 1, piece: number, lengthM: number): number {
  const [near, stray] = [grid.near[axis][piece] ?? 0, grid.stray[axis][piece] ?? 0];
  const crossed = (grid.crossed[axis][piece] ?? 0) + (grid.toll[axis][piece] ?? 0);
  return lengthM * (price.metre + price.nearness * near + price.stray * stray) + crossed * price.crossingM;
}

/** The number of the line that runs some way through a node. */
function lineThrough({ height }: DressGrid, node: number, way: number): number {
  const column = Math.floor(node / height);
  return (way & 1) === 0 ? node - column * height : column;
}

/** The nodes before an end, with the crossings between. */
function goalNodes(
  { width, height, xs, ys, shut, crossed }: DressGrid,
  goal: DressGoal,
): (readonly [number, number])[] {
  if ('node' in goal) return [[goal.node, 0]];
  const { way, edgesM } = goal;
  const axis = (way & 1) as 0 | 1;
  const lines = axis === 0 ? xs : ys;
  const found: (readonly [number, number])[] = [];
  for (let row = 0; row < edgesM.length; row += 1) {
    const edgeM = edgesM[row] ?? Number.NaN;
    if (Number.isNaN(edgeM)) continue;
    for (let line = 0; line + 1 < lines.length; line += 1) {
      const [low, high] = [lines[line] ?? 0, lines[line + 1] ?? 0];
      if (way < 2 ? !(low < edgeM && edgeM <= high) : !(low <= edgeM && edgeM < high)) continue;
      const piece = axis === 0 ? line * height + row : row * height + line;
      if (shut[axis][piece] === 1) continue;
      const node = way < 2 ? piece : axis === 0 ? piece + height : piece + 1;
      found.push([node, crossed[axis][piece] ?? 0]);
    }
  }
  return width > 0 ? found : [];
}

/** The least that is left to go from a node, in lengths and bends. */
function boundFor({ grid, goal, price }: DressTask): (node: number, way: number) => number {
  const { xs, ys, height } = grid;
  const { metre, bendM } = price;
  const sign = goal.way < 2 ? 1 : -1;
  const level = (goal.way & 1) === 0;
  if ('node' in goal) {
    const column = Math.floor(goal.node / height);
    const [x, y] = [xs[column] ?? 0, ys[goal.node - column * height] ?? 0];
    return (node, way) => {
      const at = Math.floor(node / height);
      const [dx, dy] = [x - (xs[at] ?? 0), y - (ys[node - at * height] ?? 0)];
      const isAhead = level ? dy === 0 && sign * dx >= 0 : dx === 0 && sign * dy >= 0;
      const bends = ((way ^ goal.way) & 1) === 1 ? 1 : way === goal.way && isAhead ? 0 : 2;
      return metre * (Math.abs(dx) + Math.abs(dy)) + bends * bendM;
    };
  }
  let nearestM = Infinity;
  for (const edgeM of goal.edgesM) if (sign * edgeM < nearestM) nearestM = sign * edgeM;
  return (node, way) => {
    const at = Math.floor(node / height);
    const here = sign * ((level ? xs[at] : ys[node - at * height]) ?? 0);
    const bends = ((way ^ goal.way) & 1) === 1 ? 1 : way === goal.way ? 0 : 2;
    return metre * Math.max(0, nearestM - here) + bends * bendM;
  };
}

export const wayOf = (side: (typeof sides)[number]): number => sides.indexOf(side);
