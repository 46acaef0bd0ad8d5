import { opposite, outward, type Side } from '../layout/item.ts';
import { distance, type Point } from '../shape/point.ts';
import { CrossingsAhead } from './crossings-ahead.ts';
import {
  exitGates,
  type Gate,
  type Ground,
  goalGate,
  groundFor,
  straightOut,
  terminalGate,
} from './gates.ts';
import { CheapestFirst } from './queue.ts';
import type { RouteEnd, RouteWire } from './route.ts';
import { pointOf, type TrackGrid } from './track-grid.ts';
import type { Tracks } from './tracks.ts';

/** What a route costs besides its length, in metres of wire. */
export interface RouteCosts {
  readonly bendM: number;
  readonly crossingM: number;
  /** For each metre side by side with what it should keep away from, at no distance. */
  readonly nearness: number;
}

/** How one search goes. */
export interface RouteTask {
  readonly wire: RouteWire;
  readonly tracks: Tracks;
  readonly costs: RouteCosts;
  /** Room that the wire's centre line needs, metres. */
  readonly roomM: number;
  /** The same where only points of the grid are looked at, so that nothing stands unseen between two of them. */
  readonly needM: number;
  /**
   * A bend needs this much straight wire on either side of it, metres; two bends in a row twice that between them, but
   * those of a jog, that turn opposite ways. The first of these with which there is a way is taken.
   */
  readonly bendRadiiM: readonly number[];
  /** Cost of each metre through barriers and taken tracks; infinite: not allowed. */
  readonly throughM: number;
}

/** One search on its way: between which gates, with what radius. */
interface Walk extends Omit<RouteTask, 'wire' | 'bendRadiiM'> {
  readonly ground: Ground;
  readonly goals: ReadonlyMap<number, Gate>;
  readonly bendRadiusM: number;
}

/**
 * Searches paths on one grid. What a search works in, and what depends on the grid alone, is kept for the next one.
 */
export class RouteSearch {
  readonly #grid: TrackGrid;
  readonly #grounds = new Map<string, Ground>();
  readonly #exits = new Map<string, readonly Gate[]>();
  readonly #ahead: CrossingsAhead;
  readonly #queue = new CheapestFirst();
  /** By point and direction: cost from the start, and the state before. */
  readonly #cost: Float64Array;
  readonly #before: Int32Array;
  /** Straight wire up to each state, counted from the last bend; below zero by the radius that this bend has used. */
  readonly #straight: Float64Array;
  /** From each column to the one right of it, and from each row to the one above. */
  readonly #columnM: Float64Array;
  readonly #rowM: Float64Array;
  /** The least that is left to go from each column and each row, together: to the goal, or to the line of the nearest way out (m). */
  readonly #columnLeftM: Float64Array;
  readonly #rowLeftM: Float64Array;

  constructor(grid: TrackGrid) {
    const { xs, ys } = grid;
    const states = xs.length * ys.length * 4;
    this.#grid = grid;
    this.#ahead = new CrossingsAhead(grid);
    this.#cost = new Float64Array(states);
    this.#before = new Int32Array(states);
    this.#straight = new Float64Array(states);
    this.#columnM = Float64Array.from(xs, (x, at) => (xs[at + 1] ?? x) - x);
    this.#rowM = Float64Array.from(ys, (y, at) => (ys[at + 1] ?? y) - y);
    this.#columnLeftM = new Float64Array(xs.length);
    this.#rowLeftM = new Float64Array(ys.length);
  }

  /**
   * The cheapest route of one wire, from end to end: Dijkstra's algorithm (1959) over points and directions, with the
   * straight distance and the least crossings to the goal as a lower bound (A*, Hart, Nilsson and Raphael 1968).
   * Other wires are crossed only straight, at right angles. Null where there is no way.
   */
  find(task: RouteTask): readonly Point[] | null {
    const { from, to } = task.wire;
    if ('exit' in from && 'exit' in to) return null;
    if ('exit' in from)
      return this.find({ ...task, wire: { ...task.wire, from: to, to: from } })?.toReversed() ?? null;
    const ground = this.#groundFor(task);
    const start = terminalGate(ground, from, from.faces);
    if (!start && 'exit' in to && to.exit === from.faces) return straightOut(ground, from, to.exit);
    const gates = 'exit' in to ? this.#exitsOf(ground, to.exit) : [goalGate(ground, to) ?? []].flat();
    const goals = new Map(gates.map((gate) => [gate.node, gate]));
    if (!start || !this.#ahead.look(ground, task.tracks, goals.keys(), start.node)) return null;
    this.#measureLeft(gates, to);
    for (const bendRadiusM of task.bendRadiiM) {
      const last = this.#walk({ ...task, ground, goals, bendRadiusM }, start);
      if (last >= 0) return this.#trace(last, start, goals);
    }
    return null;
  }

  #measureLeft(goals: readonly Gate[], to: RouteEnd): void {
    const { xs, ys } = this.#grid;
    const [columns, rows] = [this.#columnLeftM.fill(0), this.#rowLeftM.fill(0)];
    const points = goals.map(({ node }) => pointOf(this.#grid, node));
    if (!('exit' in to)) {
      const [goal] = points;
      if (!goal) return;
      for (const [column, x] of xs.entries()) columns[column] = Math.abs(x - goal.xM);
      for (const [row, y] of ys.entries()) rows[row] = Math.abs(y - goal.yM);
      return;
    }
    const inward = outward[opposite[to.exit]];
    const level = inward.yM === 0;
    const sign = level ? inward.xM : inward.yM;
    const nearestM = Math.max(...points.map(({ xM, yM }) => sign * (level ? xM : yM)));
    const left = level ? columns : rows;
    for (const [line, at] of (level ? xs : ys).entries()) left[line] = Math.max(0, sign * at - nearestM);
  }

  #groundFor({ roomM, needM, throughM }: RouteTask): Ground {
    const through = throughM < Infinity;
    const key = `${roomM} ${through}`;
    const ground = this.#grounds.get(key) ?? groundFor(this.#grid, { roomM, needM }, through);
    this.#grounds.set(key, ground);
    return ground;
  }

  #exitsOf(ground: Ground, side: Side): readonly Gate[] {
    const key = `${ground.needM} ${ground.through} ${side}`;
    const gates = this.#exits.get(key) ?? exitGates(ground, side);
    this.#exits.set(key, gates);
    return gates;
  }

  /** The state that the cheapest way ends in; -1 where there is none. */
  #walk(walk: Walk, start: Gate): number {
    const [cost, straight, queue] = [this.#cost, this.#straight, this.#queue];
    cost.fill(Infinity);
    queue.clear();
    const finish = cost.length;
    let [finishCost, finishFrom] = [Infinity, -1];
    const first = start.node * 4 + start.way;
    cost[first] = 0;
    this.#before[first] = -1;
    straight[first] = stubLength(start);
    queue.push(first, 0);
    for (let state = queue.pop(); state !== undefined && state !== finish; state = queue.pop()) {
      const goal = walk.goals.get(state >> 2);
      const end = goal
        ? (cost[state] ?? 0) + goalCost(walk, goal, state & 3, straight[state] ?? 0)
        : Infinity;
      if (end < finishCost) {
        [finishCost, finishFrom] = [end, state];
        queue.push(finish, end);
      }
      this.#expand(walk, state);
    }
    return finishFrom;
  }

  /** Takes every step that leads on from a state: straight, or round a bend where there is room for one. */
  #expand(walk: Walk, state: number): void {
    const height = this.#grid.ys.length;
    const node = state >> 2;
    const way = state & 3;
    const column = (node / height) | 0;
    const row = node - column * height;
    const mayBend = (this.#straight[state] ?? 0) >= walk.bendRadiusM - 1e-9;
    const back = mayBend ? -1 : this.#wayOn(state, walk.bendRadiusM);
    if (way !== 2 && (mayBend || way === 0 || back === 0)) this.#step(walk, state, 0, column + 1, row);
    if (way !== 3 && (mayBend || way === 1 || back === 1)) this.#step(walk, state, 1, column, row + 1);
    if (way !== 0 && (mayBend || way === 2 || back === 2)) this.#step(walk, state, 2, column - 1, row);
    if (way !== 1 && (mayBend || way === 3 || back === 3)) this.#step(walk, state, 3, column, row - 1);
  }

  /**
   * The way that a wire came round the bend behind it, which it may take up again at any distance: a jog is eased over the
   * straight wire before and behind it. -1 where that is too short, or there is no bend.
   */
  #wayOn(state: number, bendRadiusM: number): number {
    let before = this.#before[state] ?? -1;
    while (before >= 0 && (before & 3) === (state & 3)) before = this.#before[before] ?? -1;
    return before >= 0 && (this.#straight[before] ?? 0) >= bendRadiusM - 1e-9 ? before & 3 : -1;
  }

  /** Takes a step to a point. Is handed whole numbers alone: fractions make objects, and searches do this very often. */
  #step(walk: Walk, state: number, way: number, column: number, row: number): void {
    const { ground, tracks, costs, throughM } = walk;
    const height = this.#grid.ys.length;
    if (column < 0 || row < 0 || column >= this.#grid.xs.length || row >= height) return;
    const target = column * height + row;
    if (ground.open[target] !== 1) return;
    const node = state >> 2;
    const axis = way & 1 ? 1 : 0;
    const taken = tracks.taken[axis];
    const near = tracks.near[axis];
    const isTaken = taken[node] === 1 || taken[target] === 1;
    if (isTaken && !ground.through) return;
    // A wire that runs upright passes those that run level, and the other way round.
    const crossed = tracks.crossed[axis === 0 ? 1 : 0][target] ?? 0;
    const isNear = ((near[node] ?? 0) + (near[target] ?? 0)) / 2;
    const isStraight = way === (state & 3);
    const lengthM =
      (axis === 0 ? this.#columnM[way === 0 ? column - 1 : column] : this.#rowM[way === 1 ? row - 1 : row]) ??
      0;
    let total = (this.#cost[state] ?? 0) + (isStraight ? 0 : costs.bendM);
    total += lengthM * (1 + costs.nearness * isNear) + costs.crossingM * crossed;
    if (isTaken || (ground.through && (this.#grid.toBarrierM[target] ?? 0) < ground.needM))
      total += throughM * lengthM;
    const there = target * 4 + way;
    const runM = isStraight ? (this.#straight[state] ?? 0) + lengthM : lengthM - walk.bendRadiusM;
    const known = this.#cost[there] ?? Infinity;
    if (total >= known - 1e-12) {
      // Of two ways that cost the same, the one that may be bent sooner.
      const hasM = this.#straight[there] ?? 0;
      if (total > known + 1e-12 || hasM >= walk.bendRadiusM || runM <= hasM + 1e-9) return;
    }
    this.#cost[there] = total;
    this.#before[there] = state;
    this.#straight[there] = runM;
    const leftM = (this.#columnLeftM[column] ?? 0) + (this.#rowLeftM[row] ?? 0);
    this.#queue.push(there, total + leftM + costs.crossingM * this.#ahead.at(target));
  }

  #trace(last: number, start: Gate, goals: ReadonlyMap<number, Gate>): readonly Point[] {
    const points: Point[] = [];
    for (let state = last; state >= 0; state = this.#before[state] ?? -1)
      points.push(pointOf(this.#grid, state >> 2));
    return [...start.stub, ...points.toReversed(), ...(goals.get(last >> 2)?.stub ?? [])];
  }
}

function stubLength({ stub: [a, b] }: Gate): number {
  return a && b ? distance(a, b) : 0;
}

/** Whether the last stretch leaves room for the bend before it, and for one right at the goal. */
function mayEnd(bendRadiusM: number, goal: Gate, way: number, runM: number): boolean {
  const stubM = stubLength(goal);
  if (way === goal.way) return runM + stubM >= -1e-9;
  return runM >= bendRadiusM - 1e-9 && stubM >= bendRadiusM - 1e-9;
}

/** From the goal's point to the end of the wire; infinite where a bend has no room, or another wire has that track. */
function goalCost(
  { tracks, costs, ground, bendRadiusM }: Walk,
  goal: Gate,
  way: number,
  runM: number,
): number {
  const stubM = goal.loose ? stubLength(goal) : 0;
  const back = ((way + 2) & 3) === goal.way;
  const taken = tracks.taken[goal.way % 2 === 0 ? 0 : 1][goal.node] === 1;
  if (back || (taken && !ground.through) || !mayEnd(bendRadiusM, goal, way, runM)) return Infinity;
  return stubM + (way === goal.way ? 0 : costs.bendM);
}
