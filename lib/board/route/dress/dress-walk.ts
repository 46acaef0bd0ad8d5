import type { DressAhead } from './dress-ahead.ts';
import { type DressGrid, shutBit } from './dress-grid.ts';
import { DressLines } from './dress-lines.ts';
import type { DressStates } from './dress-states.ts';
import type { DressGoal, DressTask, WayPrice } from './dress-task.ts';

/** Where a way ends: the state before its last stretch, -1 where that is the start, and where that stretch begins. */
export interface DressEnd {
  readonly from: number;
  readonly node: number;
}

/**
 * One search for the cheapest way: Dijkstra's algorithm (1959) over crossings of lines and directions, with the least
 * distance and the least crossings that are left as a lower bound (A*, Hart, Nilsson and Raphael 1968). States are those
 * in which the wire may be bent: behind a bend it is led on at once until it may be bent again.
 */
export class DressWalk {
  readonly #task: DressTask;
  readonly #grid: DressGrid;
  readonly #goal: DressGoal;
  readonly #price: WayPrice;
  readonly #edgeLines: Int16Array;
  readonly #ahead: DressAhead;
  readonly #states: DressStates;
  /** Lines that level pieces lie between, and those of upright ones. */
  readonly #along: readonly [DressLines, DressLines];
  /** The lines that the wire begins on, and on which it ends in a terminal: -1 where it leaves the board. */
  readonly #startLine: number;
  readonly #goalLine: number;
  readonly #finishState: number;
  readonly #betweenBendsM: number;
  /** What the wire costs up to where `#run` takes over: handed on here, since a fraction as an argument makes an object. */
  readonly #begun = new Float64Array(1);
  /** The cheapest end so far. */
  #endCost = Infinity;
  #end: DressEnd | null = null;

  /** `edgeLines`: by line across the way out, the piece in which it comes to the edge, by its lower line; -1: in none. */
  constructor(task: DressTask, edgeLines: Int16Array, ahead: DressAhead, states: DressStates) {
    const { grid, goal, price, bendRadiusM } = task;
    [this.#task, this.#grid, this.#goal, this.#price] = [task, grid, goal, price];
    [this.#edgeLines, this.#ahead, this.#states] = [edgeLines, ahead, states];
    this.#along = linesFor(task);
    this.#startLine = lineThrough(grid, task.start.node, task.start.way);
    this.#goalLine = 'node' in goal ? lineThrough(grid, goal.node, goal.way) : -1;
    this.#finishState = grid.width * grid.height * 4;
    this.#betweenBendsM = 2 * bendRadiusM;
  }

  /** Where the cheapest way ends; null where there is none. */
  end(): DressEnd | null {
    const { start, bendRadiusM } = this.#task;
    const { queue } = this.#states;
    this.#lead(-1, start.node, start.way, 0, start.stubM, bendRadiusM);
    for (let state = queue.pop(); state !== undefined && state !== this.#finishState; state = queue.pop())
      this.#expand(state);
    return this.#end;
  }

  /** Straight on to the next crossing of lines, or round a bend. */
  #expand(state: number): void {
    const { height } = this.#grid;
    const node = state >> 2;
    const way = state & 3;
    const column = (node / height) | 0;
    const row = node - column * height;
    const isLevel = (way & 1) === 0;
    const line = isLevel ? column : row;
    const next = way < 2 ? line + 1 : line - 1;
    const count = isLevel ? this.#grid.width : height;
    const cost = this.#states.cost[state] ?? 0;
    this.#begun[0] = cost;
    this.#run(state, column, row, way, next < count ? next : -1, false);
    // Either bend takes its radius of the straight wire between them.
    const { up, down } = this.#along[isLevel ? 1 : 0];
    const across = isLevel ? row : column;
    const one = (way + 1) & 3;
    const other = (way + 3) & 3;
    this.#begun[0] = cost + this.#price.bendM;
    this.#run(state, column, row, one, (one < 2 ? up[across] : down[across]) ?? -1, true);
    this.#jog(state, column, row, one);
    this.#begun[0] = cost + this.#price.bendM;
    this.#run(state, column, row, other, (other < 2 ? up[across] : down[across]) ?? -1, true);
    this.#jog(state, column, row, other);
  }

  /**
   * On beside the line that a wire came on, nearer than two bends need: they turn opposite ways, and are eased over the
   * straight wire before and behind them. From the line of its start to any, and from any to that of its goal.
   */
  #jog(state: number, column: number, row: number, aside: number): void {
    const way = state & 3;
    const isLevel = (way & 1) === 0;
    const from = isLevel ? row : column;
    const isFree = way === this.#task.start.way && from === this.#startLine;
    const toward = way === this.#goal.way ? this.#goalLine : -1;
    if (!isFree && toward < 0) return;
    const axis = (aside & 1) as 0 | 1;
    const { at, pieceM } = this.#along[axis];
    const up = aside < 2;
    const [fromM, mostM] = [at[from] ?? 0, this.#betweenBendsM - 1e-9];
    const toGoalM = toward < 0 ? Infinity : ((at[toward] ?? 0) - fromM) * (up ? 1 : -1);
    if (!isFree && (toGoalM <= 0 || toGoalM >= mostM)) return;
    const { up: ups, down: downs } = this.#along[isLevel ? 0 : 1];
    const to = (way < 2 ? ups : downs)[isLevel ? column : row] ?? -1;
    const stride = axis === 0 ? this.#grid.height : 1;
    let [here, cost] = [state >> 2, (this.#states.cost[state] ?? 0) + 2 * this.#price.bendM];
    for (let line = from; up ? line + 1 < at.length : line > 0; ) {
      const piece = up ? here : here - stride;
      if (((this.#grid.pieces[axis][piece] ?? 0) & shutBit) !== 0) return;
      const next = up ? line + 1 : line - 1;
      if (Math.abs((at[next] ?? 0) - fromM) >= mostM) return;
      cost += this.#priceOf(axis, piece, pieceM[up ? line : next] ?? 0);
      here += up ? stride : -stride;
      line = next;
      if (isFree || line === toward) {
        this.#begun[0] = cost;
        this.#run(state, isLevel ? column : line, isLevel ? line : row, way, to, true);
      }
      if (!isFree && line === toward) return;
    }
  }

  /**
   * Leads a wire that comes from a state straight on to the line on which it may be bent; -1: it leads to none. Has all in
   * one, and no fraction among its arguments: searches do this very often.
   */
  #run(from: number, column: number, row: number, way: number, to: number, isBent: boolean): void {
    const isLevel = (way & 1) === 0;
    const line = isLevel ? column : row;
    const across = isLevel ? row : column;
    if (way === this.#goal.way && this.#meetsGoal(line, across, to)) {
      this.#runOut(from, column * this.#grid.height + row, way, isBent);
      return;
    }
    if (to < 0) return;
    const grid = this.#grid;
    const { cost: costs } = this.#states;
    const axis = isLevel ? 0 : 1;
    const { at, plain, pieceM } = this.#along[axis];
    const toColumn = isLevel ? to : column;
    const toRow = isLevel ? row : to;
    const there = (toColumn * grid.height + toRow) * 4 + way;
    const { metre, nearness, stray: strayM, crossingM } = this.#price;
    let sum = this.#begun[0] ?? 0;
    const known = costs[there] ?? 0;
    // Nothing costs less than its length.
    if (sum + metre * Math.abs((at[to] ?? 0) - (at[line] ?? 0)) > known + 1e-9) return;
    const pieces = grid.pieces[axis];
    const stride = isLevel ? grid.height : 1;
    const first = isLevel ? across : across * grid.height;
    const step = to > line ? 1 : -1;
    const end = to > line ? to : to - 1;
    for (let at = to > line ? line : line - 1; at !== end; at += step) {
      const e = first + at * stride;
      const kind = pieces[e] ?? 0;
      if (kind === 0) sum += plain[at] ?? 0;
      else if ((kind & shutBit) !== 0) return;
      else
        sum +=
          (pieceM[at] ?? 0) *
            (metre + nearness * (grid.near[axis][e] ?? 0) + strayM * (grid.stray[axis][e] ?? 0)) +
          ((grid.crossed[axis][e] ?? 0) + (grid.toll[axis][e] ?? 0)) * crossingM;
    }
    if (!(sum < known - 1e-12)) return;
    this.#states.before[there] = from;
    if (known === Infinity) this.#states.note(there);
    costs[there] = sum;
    this.#queueUp(there, toColumn, toRow);
  }

  /** Queues a state up, by what the way to it costs and the least that is left in lengths, bends and crossings. */
  #queueUp(state: number, column: number, row: number): void {
    const { metre, bendM, crossingM } = this.#price;
    const way = state & 3;
    const [xs, ys] = this.#along;
    const isAhead = xs.ahead[column] === 1 && ys.ahead[row] === 1;
    const bends = ((way ^ this.#goal.way) & 1) === 1 ? 1 : way === this.#goal.way && isAhead ? 0 : 2;
    const leastM = metre * ((xs.leftM[column] ?? 0) + (ys.leftM[row] ?? 0)) + bends * bendM;
    const { cost, queue } = this.#states;
    queue.push(state, (cost[state] ?? 0) + leastM + crossingM * this.#ahead.at(state >> 2));
  }

  /** Leads a wire straight from a node to where it may end. */
  #runOut(from: number, node: number, way: number, isBent: boolean): void {
    const cost = this.#begun[0] ?? 0;
    if (isBent) this.#lead(from, node, way, cost, 0, this.#betweenBendsM);
    else this.#lead(from, node, way, cost, this.#betweenBendsM, 0);
  }

  /** True where a way straight to a line may end on it; -1: all the way. */
  #meetsGoal(line: number, across: number, to: number): boolean {
    const { way } = this.#goal;
    if (this.#goalLine >= 0) return across === this.#goalLine;
    const edgeLine = this.#edgeLines[across] ?? -1;
    if (edgeLine < 0) return false;
    return way < 2
      ? edgeLine >= line && (to < 0 || edgeLine < to)
      : edgeLine < line && (to < 0 || edgeLine >= to);
  }

  /** Leads a wire straight from a node until it may be bent, or ends: `runM` straight wire it has, `needM` it needs. */
  #lead(from: number, node: number, way: number, cost: number, runM: number, needM: number): void {
    const [grid, goal, { bendRadiusM }] = [this.#grid, this.#goal, this.#task];
    const axis = (way & 1) as 0 | 1;
    const { at } = this.#along[axis];
    const stride = axis === 0 ? grid.height : 1;
    const column = Math.floor(node / grid.height);
    const row = node - column * grid.height;
    let line = axis === 0 ? column : row;
    const up = way < 2;
    const across = axis === 0 ? row : column;
    const isExit = goal.way === way && 'edgesM' in goal;
    const edgeM = isExit ? (goal.edgesM[across] ?? Number.NaN) : Number.NaN;
    let [here, sum, hasM] = [node, cost, runM];
    for (let first = true; ; first = false) {
      const isEnd = goal.way === way && 'node' in goal && goal.node === here;
      if (isEnd && hasM + goal.stubM >= bendRadiusM - 1e-9) this.#finish(sum, from, node);
      // With no way to go for a first bend, the wire may be bent where it stands.
      if ((!first || from < 0) && hasM >= needM - 1e-9) break;
      if (up ? line + 1 >= at.length : line <= 0) return;
      const piece = up ? here : here - stride;
      if (((grid.pieces[axis][piece] ?? 0) & shutBit) !== 0) return;
      const [lowM, highM] = up ? [at[line] ?? 0, at[line + 1] ?? 0] : [at[line - 1] ?? 0, at[line] ?? 0];
      const ends = up ? edgeM > lowM && edgeM <= highM : edgeM >= lowM && edgeM < highM;
      const lengthM = ends ? (up ? edgeM - lowM : highM - edgeM) : highM - lowM;
      sum += this.#priceOf(axis, piece, lengthM);
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
    const { cost: costs, before } = this.#states;
    const known = costs[there] ?? 0;
    if (!(sum < known - 1e-12)) return;
    if (known === Infinity) this.#states.note(there);
    [costs[there], before[there]] = [sum, from];
    this.#queueUp(there, axis === 0 ? line : column, axis === 0 ? row : line);
  }

  /** What so long a part of a piece costs, with all that is crossed on it. */
  #priceOf(axis: 0 | 1, piece: number, lengthM: number): number {
    const { near, stray, crossed, toll } = this.#grid;
    const { metre, nearness, stray: strayM, crossingM } = this.#price;
    return (
      lengthM * (metre + nearness * (near[axis][piece] ?? 0) + strayM * (stray[axis][piece] ?? 0)) +
      ((crossed[axis][piece] ?? 0) + (toll[axis][piece] ?? 0)) * crossingM
    );
  }

  #finish(cost: number, from: number, node: number): void {
    if (cost >= this.#endCost) return;
    [this.#endCost, this.#end] = [cost, { from, node }];
    this.#states.queue.push(this.#finishState, cost);
  }
}

/** The number of the line that runs some way through a node. */
function lineThrough({ height }: DressGrid, node: number, way: number): number {
  const column = Math.floor(node / height);
  return (way & 1) === 0 ? node - column * height : column;
}

/** The lines of a grid as a search goes along them, with what is left from each to its goal. */
function linesFor({ grid, goal, bendRadiusM, price }: DressTask): readonly [DressLines, DressLines] {
  const plainMetre = price.metre + price.stray * grid.strays;
  const xs = new DressLines(grid.xs, 2 * bendRadiusM, plainMetre);
  const ys = new DressLines(grid.ys, 2 * bendRadiusM, plainMetre);
  const sign = goal.way < 2 ? 1 : -1;
  const along = (goal.way & 1) === 0 ? xs : ys;
  if ('node' in goal) {
    const column = Math.floor(goal.node / grid.height);
    xs.aimAt(grid.xs[column] ?? 0, along === xs ? sign : 0);
    ys.aimAt(grid.ys[goal.node - column * grid.height] ?? 0, along === ys ? sign : 0);
    return [xs, ys];
  }
  let nearestM = Infinity;
  for (const edgeM of goal.edgesM) if (sign * edgeM < nearestM) nearestM = sign * edgeM;
  along.leaveBeyond(nearestM, sign);
  return [xs, ys];
}
