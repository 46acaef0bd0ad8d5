import { opposite, type Side } from '../layout/item.ts';
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
import { outFrom, type RouteEnd, type RouteWire } from './route.ts';
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
   * those of a jog, that turn opposite ways.
   */
  readonly bendRadiusM: number;
  /** Cost of each metre through barriers and taken tracks; infinite: not allowed. */
  readonly throughM: number;
}

/** One search on its way: between which gates, and the least that is left from each point in metres. */
interface Walk extends Omit<RouteTask, 'wire'> {
  readonly ground: Ground;
  readonly goals: ReadonlyMap<number, Gate>;
  readonly bound: (node: number) => number;
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
    const bound = lowerBound(this.#grid, gates, to);
    const last = this.#walk({ ...task, ground, goals, bound }, start);
    return last < 0 ? null : this.#trace(last, start, goals);
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
    this.#before.fill(-1);
    queue.clear();
    const finish = cost.length;
    let [finishCost, finishFrom] = [Infinity, -1];
    const first = start.node * 4 + start.way;
    cost[first] = 0;
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
    const [width, height] = [this.#grid.xs.length, this.#grid.ys.length];
    const [node, way] = [state >> 2, state & 3];
    const column = Math.floor(node / height);
    const row = node - column * height;
    const mayBend = (this.#straight[state] ?? 0) >= walk.bendRadiusM - 1e-9;
    const back = mayBend ? -1 : this.#wayOn(state, walk.bendRadiusM);
    const right = this.#columnM[column] ?? 0;
    const left = this.#columnM[column - 1] ?? 0;
    if (way !== 2 && (mayBend || way === 0 || back === 0) && column < width - 1)
      this.#step(walk, state, 0, node + height, right);
    if (way !== 3 && (mayBend || way === 1 || back === 1) && row < height - 1)
      this.#step(walk, state, 1, node + 1, this.#rowM[row] ?? 0);
    if (way !== 0 && (mayBend || way === 2 || back === 2) && column > 0)
      this.#step(walk, state, 2, node - height, left);
    if (way !== 1 && (mayBend || way === 3 || back === 3) && row > 0)
      this.#step(walk, state, 3, node - 1, this.#rowM[row - 1] ?? 0);
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

  #step(walk: Walk, state: number, way: number, target: number, lengthM: number): void {
    const { ground, tracks, costs, throughM } = walk;
    if (ground.open[target] !== 1) return;
    const [node, level] = [state >> 2, way === 0 || way === 2];
    const [taken, near] = level ? [tracks.taken[0], tracks.near[0]] : [tracks.taken[1], tracks.near[1]];
    const isTaken = taken[node] === 1 || taken[target] === 1;
    if (isTaken && !ground.through) return;
    // A wire that runs upright passes those that run level, and the other way round.
    const crossed = (level ? tracks.crossed[1] : tracks.crossed[0])[target] ?? 0;
    const isNear = ((near[node] ?? 0) + (near[target] ?? 0)) / 2;
    const isStraight = way === (state & 3);
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
    this.#queue.push(there, total + walk.bound(target) + costs.crossingM * this.#ahead.at(target));
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

/** The least that is left to go from a node: to the goal, or to the line of the nearest way out. */
function lowerBound(grid: TrackGrid, goals: readonly Gate[], to: RouteEnd): (node: number) => number {
  const points = goals.map(({ node }) => pointOf(grid, node));
  const { xs, ys } = grid;
  if (!('exit' in to)) {
    const [goal] = points;
    if (!goal) return () => 0;
    const { xM, yM } = goal;
    return (node) => {
      const column = Math.floor(node / ys.length);
      return Math.abs((xs[column] ?? 0) - xM) + Math.abs((ys[node - column * ys.length] ?? 0) - yM);
    };
  }
  const inward = opposite[to.exit];
  const { xM: ux, yM: uy } = outFrom({ xM: 0, yM: 0 }, inward, 1);
  const depth = ({ xM, yM }: Point) => xM * ux + yM * uy;
  const nearest = Math.max(...points.map(depth));
  return (node) => Math.max(0, depth(pointOf(grid, node)) - nearest);
}
