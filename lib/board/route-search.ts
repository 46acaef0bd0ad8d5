import { opposite, type Side } from './item.ts';
import { distance, edgesOf, type Point, segmentsCross } from './point.ts';
import { CheapestFirst } from './queue.ts';
import { into, outFrom, type RouteEnd, type RouteWire } from './route.ts';
import type { TrackGrid } from './track-grid.ts';
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
  readonly grid: TrackGrid;
  readonly wire: RouteWire;
  readonly tracks: Tracks;
  readonly costs: RouteCosts;
  /** Room that the wire's centre line needs, metres. */
  readonly needM: number;
  /** A bend needs this much straight wire on either side of it, metres; two bends in a row twice that between them. */
  readonly bendRadiusM: number;
  /** Cost of each metre through barriers and taken tracks; infinite: not allowed. */
  readonly throughM: number;
}

/** Directions in the order of their numbers. */
const ways: readonly Side[] = ['right', 'top', 'left', 'bottom'];
const step = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/** Quarter turns that a wire may take at a point: any but back, or none. */
const anyTurn: readonly number[] = [0, 1, 3];
const straightOn: readonly number[] = [0];

interface Gate {
  readonly node: number;
  readonly way: number;
  /** From the end of the wire to the node. */
  readonly stub: readonly Point[];
  /** Any direction will do; turning into `way` costs a bend. */
  readonly loose: boolean;
}

/**
 * The cheapest route of one wire on a grid, from end to end: Dijkstra's algorithm (1959) over points and
 * directions, with the straight distance to the goal as a lower bound (A*, Hart, Nilsson and Raphael 1968).
 * Other wires are crossed only straight, at right angles. Null where there is no way.
 */
export function findRoute(task: RouteTask): readonly Point[] | null {
  const { from, to } = task.wire;
  if ('exit' in from && 'exit' in to) return null;
  if ('exit' in from)
    return findRoute({ ...task, wire: { ...task.wire, from: to, to: from } })?.toReversed() ?? null;
  const start = terminalGate(task, from, from.faces);
  if (!start && 'exit' in to && to.exit === from.faces) return straightOut(task, from, to.exit);
  const goals = 'exit' in to ? exitGates(task, to.exit) : [goalGate(task, to)].flatMap((gate) => gate ?? []);
  if (!start || goals.length === 0) return null;
  return walk(task, start, goals, to);
}

/** From a terminal so near to the edge that the grid has no point between: straight over it. */
function straightOut({ grid, needM }: RouteTask, terminal: Point, side: Side): readonly Point[] | null {
  const edge = edgeAhead(grid, outFrom(terminal, opposite[side], 1e-6), side);
  return edge && distance(terminal, edge) < needM + grid.stepM ? [terminal, edge] : null;
}

/** The first point of the grid straight out of a terminal that has room for the wire. */
function terminalGate(task: RouteTask, terminal: Point, faces: Side): Gate | null {
  const { grid, needM } = task;
  const [x, y] = [indexOf(grid.xs, terminal.xM), indexOf(grid.ys, terminal.yM)];
  if (x < 0 || y < 0) return null;
  const way = ways.indexOf(faces);
  const [dx, dy] = step[way] ?? [0, 0];
  for (let far = 1; far < 40; far += 1) {
    const node = nodeAt(grid, x + far * dx, y + far * dy);
    if (node < 0) return null;
    const free = (grid.toBarrierM[node] ?? 0) >= needM && (grid.toEdgeM[node] ?? 0) >= needM;
    const open = free || (task.throughM < Infinity && (grid.toEdgeM[node] ?? 0) >= needM);
    if (!open) continue;
    // The end stands on its line of the grid exactly, so that the stub is straight to the last digit.
    const { xM, yM } = pointOf(grid, node);
    const end = dx === 0 ? { xM, yM: terminal.yM } : { xM: terminal.xM, yM };
    return { node, way, stub: [end, { xM, yM }], loose: false };
  }
  return null;
}

function goalGate(task: RouteTask, terminal: Point & { readonly faces: Side }): Gate | null {
  const gate = terminalGate(task, terminal, terminal.faces);
  return gate && { ...gate, way: ways.indexOf(into(terminal.faces)), stub: gate.stub.toReversed() };
}

/** The points from which a wire goes straight over a side of the board, nothing in between. */
function exitGates(task: RouteTask, side: Side): Gate[] {
  const { grid, needM } = task;
  const way = ways.indexOf(side);
  const [dx, dy] = step[way] ?? [0, 0];
  const across = dx === 0 ? grid.xs.length : grid.ys.length;
  const deep = dx === 0 ? grid.ys.length : grid.xs.length;
  return Array.from({ length: across }, (_, line) => line).flatMap((line): Gate[] => {
    for (let back = 0; back < deep; back += 1) {
      const along = dx + dy > 0 ? deep - 1 - back : back;
      const node = dx === 0 ? nodeAt(grid, line, along) : nodeAt(grid, along, line);
      if (!passable(task, node)) {
        // Board with a part or a fixing on it, and not merely the edge, is in front of every point further in.
        if ((grid.toEdgeM[node] ?? -1) >= 0 && (grid.toBarrierM[node] ?? 0) < needM) return [];
        continue;
      }
      const point = pointOf(grid, node);
      const toEdge = edgeAhead(grid, point, side);
      const reachM = needM + grid.stepM + 1e-6;
      if (!toEdge || distance(point, toEdge) > reachM) return [];
      return [{ node, way, stub: [point, toEdge], loose: true }];
    }
    return [];
  });
}

/** Where a ray leaves the board. */
function edgeAhead(grid: TrackGrid, from: Point, side: Side): Point | null {
  const span = grid.box.maxX - grid.box.minX + grid.box.maxY - grid.box.minY;
  const far = outFrom(from, side, span);
  const hits = edgesOf(grid.outer).flatMap(([a, b]) => {
    if (!segmentsCross(from, far, a, b)) return [];
    const level = side === 'right' || side === 'left';
    const share = level ? (from.yM - a.yM) / (b.yM - a.yM) : (from.xM - a.xM) / (b.xM - a.xM);
    return [{ xM: a.xM + share * (b.xM - a.xM), yM: a.yM + share * (b.yM - a.yM) }];
  });
  const [first] = hits.toSorted((p, q) => distance(from, p) - distance(from, q));
  if (!first) return null;
  return side === 'right' || side === 'left' ? { xM: first.xM, yM: from.yM } : { xM: from.xM, yM: first.yM };
}

function indexOf(lines: readonly number[], value: number): number {
  return lines.findIndex((line) => Math.abs(line - value) < 1e-6);
}

function nodeAt({ xs, ys }: TrackGrid, x: number, y: number): number {
  return x < 0 || y < 0 || x >= xs.length || y >= ys.length ? -1 : x * ys.length + y;
}

function pointOf({ xs, ys }: TrackGrid, node: number): Point {
  return { xM: xs[Math.floor(node / ys.length)] ?? 0, yM: ys[node % ys.length] ?? 0 };
}

function passable({ grid, needM, throughM }: RouteTask, node: number): boolean {
  if (node < 0 || (grid.toEdgeM[node] ?? -1) < needM) return false;
  return throughM < Infinity || (grid.toBarrierM[node] ?? 0) >= needM;
}

/** What a step costs; infinite where it is not allowed. */
function stepCost(task: RouteTask, from: number, to: number, way: number, lengthM: number): number {
  const { grid, tracks, costs, needM, throughM } = task;
  if (!passable(task, to)) return Infinity;
  const axis = way % 2 === 0 ? 0 : 1;
  const taken = tracks.taken[axis][from] || tracks.taken[axis][to];
  if (taken && throughM === Infinity) return Infinity;
  const blocked = taken || (grid.toBarrierM[to] ?? 0) < needM ? throughM * lengthM : 0;
  const near = ((tracks.near[axis][from] ?? 0) + (tracks.near[axis][to] ?? 0)) / 2;
  // A wire that runs upright passes those that run level, and the other way round.
  const crossed = tracks.crossed[1 - axis === 0 ? 0 : 1][to] ?? 0;
  return lengthM * (1 + costs.nearness * near) + costs.crossingM * crossed + blocked;
}

function walk(task: RouteTask, start: Gate, goals: readonly Gate[], to: RouteEnd): readonly Point[] | null {
  const { grid, costs } = task;
  const size = grid.xs.length * grid.ys.length * 4;
  const cost = new Float64Array(size).fill(Infinity);
  const before = new Int32Array(size).fill(-1);
  // Straight wire up to each state, counted from the last bend; below zero by the radius that this bend has used.
  const straight = new Float64Array(size);
  const queue = new CheapestFirst();
  const goalAt = new Map(goals.map((gate) => [gate.node, gate]));
  const finish = size;
  const height = grid.ys.length;
  let [finishCost, finishFrom] = [Infinity, -1];
  const first = start.node * 4 + start.way;
  cost[first] = 0;
  straight[first] = stubLength(start);
  const bound = lowerBound(grid, goals, to);
  queue.push(first, bound(start.node));
  for (let state = queue.pop(); state !== undefined && state !== finish; state = queue.pop()) {
    const [node, way] = [state >> 2, state & 3];
    const soFar = cost[state] ?? Infinity;
    const goal = goalAt.get(node);
    const runM = straight[state] ?? 0;
    const end = goal && mayEnd(task, goal, way, runM) ? soFar + goalCost(task, goal, way) : Infinity;
    if (end < finishCost) {
      [finishCost, finishFrom] = [end, state];
      queue.push(finish, end);
    }
    for (const turn of runM >= task.bendRadiusM - 1e-9 ? anyTurn : straightOn) {
      const next = (way + turn) & 3;
      const [dx, dy] = step[next] ?? [0, 0];
      const [x, y] = [Math.floor(node / height), node % height];
      const target = nodeAt(grid, x + dx, y + dy);
      if (target < 0) continue;
      const [xs, ys] = [grid.xs, grid.ys];
      const lengthM =
        dx === 0 ? Math.abs((ys[y + dy] ?? 0) - (ys[y] ?? 0)) : Math.abs((xs[x + dx] ?? 0) - (xs[x] ?? 0));
      const total = soFar + (turn === 0 ? 0 : costs.bendM) + stepCost(task, node, target, next, lengthM);
      const there = target * 4 + next;
      if (!(total < (cost[there] ?? Infinity) - 1e-12)) continue;
      cost[there] = total;
      before[there] = state;
      straight[there] = turn === 0 ? runM + lengthM : lengthM - task.bendRadiusM;
      queue.push(there, total + bound(target));
    }
  }
  return finishFrom < 0 ? null : trace(grid, before, finishFrom, start, goalAt);
}

function stubLength({ stub: [a, b] }: Gate): number {
  return a && b ? distance(a, b) : 0;
}

/** Whether the last stretch leaves room for the bend before it, and for one right at the goal. */
function mayEnd({ bendRadiusM }: RouteTask, goal: Gate, way: number, runM: number): boolean {
  const stubM = stubLength(goal);
  if (way === goal.way) return runM + stubM >= -1e-9;
  return runM >= bendRadiusM - 1e-9 && stubM >= bendRadiusM - 1e-9;
}

/** From the goal's point to the end of the wire; infinite where another wire has that track. */
function goalCost({ tracks, costs, throughM }: RouteTask, goal: Gate, way: number): number {
  const [a, b] = goal.stub;
  const stubM = goal.loose && a && b ? distance(a, b) : 0;
  const back = ((way + 2) & 3) === goal.way;
  const taken = tracks.taken[goal.way % 2 === 0 ? 0 : 1][goal.node] === 1;
  if (back || (taken && throughM === Infinity)) return Infinity;
  return stubM + (way === goal.way ? 0 : costs.bendM);
}

/** The least that is left to go from a node: to the goal, or to the line of the nearest way out. */
function lowerBound(grid: TrackGrid, goals: readonly Gate[], to: RouteEnd): (node: number) => number {
  const points = goals.map(({ node }) => pointOf(grid, node));
  if (!('exit' in to)) {
    const [goal] = points;
    if (!goal || points.length !== 1) return () => 0;
    const { xs, ys } = grid;
    return (node) =>
      Math.abs((xs[Math.floor(node / ys.length)] ?? 0) - goal.xM) +
      Math.abs((ys[node % ys.length] ?? 0) - goal.yM);
  }
  const inward = opposite[to.exit];
  const { xM: ux, yM: uy } = outFrom({ xM: 0, yM: 0 }, inward, 1);
  const depth = ({ xM, yM }: Point) => xM * ux + yM * uy;
  const nearest = Math.max(...points.map(depth));
  return (node) => Math.max(0, depth(pointOf(grid, node)) - nearest);
}

function trace(
  grid: TrackGrid,
  before: Int32Array,
  last: number,
  start: Gate,
  goalAt: ReadonlyMap<number, Gate>,
): readonly Point[] {
  const points: Point[] = [];
  for (let state = last; state >= 0; state = before[state] ?? -1) points.push(pointOf(grid, state >> 2));
  return [...start.stub, ...points.toReversed(), ...(goalAt.get(last >> 2)?.stub ?? [])];
}
