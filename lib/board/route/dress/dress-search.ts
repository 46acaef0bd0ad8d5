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
  /** The cheapest end so far, and the state that leads to it: -1 is the start, -2 none. */
  #end: readonly [number, number] = [Infinity, -2];

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
    this.#cost.fill(Infinity, 0, states);
    this.#queue.clear();
    this.#end = [Infinity, -2];
    this.#finishState = states;
    this.#lead(task, -1, start.node, start.way, 0, start.stubM, bendRadiusM);
    for (let state = this.#queue.pop(); state !== undefined && state !== states; state = this.#queue.pop())
      this.#expand(task, state);
    return this.#end[1] < -1 ? null : this.#trace(task, this.#end[1]);
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
        this.#finish(sum, from);
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
        if (hasM >= bendRadiusM - 1e-9) this.#finish(sum + tollM, from);
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

  #finish(cost: number, from: number): void {
    if (cost >= this.#end[0]) return;
    this.#end = [cost, from];
    this.#queue.push(this.#finishState, cost);
  }

  #trace({ grid, start, goal }: DressTask, last: number): readonly Point[] {
    const points: Point[] = [];
    const pointOf = (node: number): Point => {
      const column = Math.floor(node / grid.height);
      return { xM: grid.xs[column] ?? 0, yM: grid.ys[node - column * grid.height] ?? 0 };
    };
    for (let state = last; state >= 0; state = this.#before[state] ?? -1) points.unshift(pointOf(state >> 2));
    points.unshift(pointOf(start.node));
    if ('node' in goal) return [...points, pointOf(goal.node)];
    const node = last < 0 ? start.node : last >> 2;
    const column = Math.floor(node / grid.height);
    const level = (goal.way & 1) === 0;
    const edgeM = goal.edgesM[level ? node - column * grid.height : column] ?? 0;
    const end = pointOf(node);
    return [...points, level ? { xM: edgeM, yM: end.yM } : { xM: end.xM, yM: edgeM }];
  }
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
