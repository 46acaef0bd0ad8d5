import { opposite, outward } from '../../layout/item.ts';
import { distance, type Point } from '../../shape/point.ts';
import {
  isPoint,
  outFrom,
  type Route,
  type RouteWire,
  routeThrough,
  type Stretch,
  stretches,
} from '../route.ts';
import { type Laid, terminalRoomM } from '../tracks.ts';
import { DressGrid, firstFrom, GridMemory, type MayShare } from './dress-grid.ts';
import { type DressRoom, type DressRooms, offM } from './dress-room.ts';
import { type DressGoal, DressSearch, type DressStart, type WayPrice, wayOf } from './dress-search.ts';

/** What crossing a wire costs besides, for once, in crossings. */
export type TollOf = (wire: RouteWire) => number;

/** A wire to lay. */
export interface LayTask {
  readonly wire: RouteWire;
  readonly others: readonly Laid[];
  /** Wires that are still to come, whose terminals had better not be passed. */
  readonly open: readonly RouteWire[];
  readonly price: WayPrice;
  readonly tollOf: TollOf;
}

/** Lays single wires on lines that touch what they pass: parts, fixings, edges, and the wires that lie already. */
export class Dresser {
  searches = 0;
  readonly #rooms: DressRooms;
  readonly #apartM: number;
  readonly #memory = new GridMemory();
  readonly #search = new DressSearch();

  constructor(rooms: DressRooms, powerToSignalM: number) {
    this.#rooms = rooms;
    this.#apartM = powerToSignalM;
  }

  /** The cheapest way of a wire past others; null where there is none. */
  lay(task: LayTask): Route | null {
    const { wire, others, open, price, tollOf } = task;
    const { from, to } = wire;
    if (!isPoint(from)) {
      if (!isPoint(to)) return null;
      const turned = this.lay({ ...task, wire: { ...wire, from: to, to: from } });
      return turned && routeThrough(wire, turned.points.toReversed());
    }
    this.searches += 1;
    const { diameterM, bendRadiusM = 0 } = wire;
    const needM = this.#rooms.needM(diameterM) + offM;
    const room = this.#rooms.roomFor(diameterM);
    const start = outFrom(from, from.faces, needM);
    const end = isPoint(to) ? outFrom(to, to.faces, needM) : null;
    const grid = new DressGrid(
      this.#lines(false, wire, room, others, end ? [start, end] : [start]),
      this.#lines(true, wire, room, others, end ? [start, end] : [start]),
      this.#memory,
    );
    for (const box of room.boxes) grid.shutBox(box);
    const goal = this.#goal(grid, wire, end, needM);
    for (const other of others) this.#mark(grid, wire, other, tollOf(other.wire));
    for (const mouth of open.flatMap((one) => mouthsOf(one, needM))) grid.crossAt(mouth, 0);
    const begin: DressStart = { node: nodeOf(grid, start), way: wayOf(from.faces), stubM: needM };
    const points = this.#search.find({ grid, start: begin, goal, bendRadiusM, price });
    return points && routeThrough(wire, [from, ...points, ...(isPoint(to) ? [to] : [])]);
  }

  /** Level or upright lines that a wire may run on. */
  #lines(
    level: boolean,
    wire: RouteWire,
    room: DressRoom,
    others: readonly Laid[],
    gates: readonly Point[],
  ): Float64Array {
    const { bendRadiusM = 0, diameterM } = wire;
    const pick = (p: Point) => (level ? p.yM : p.xM);
    const values = [...(level ? room.ys : room.xs)];
    for (const gate of gates) values.push(pick(gate));
    for (const end of [wire.from, wire.to]) {
      if (!isPoint(end)) continue;
      const out = pick(outward[end.faces]);
      if (out === 0) values.push(pick(end), pick(end) - 2 * bendRadiusM, pick(end) + 2 * bendRadiusM);
      else values.push(pick(end) + out * bendRadiusM);
    }
    const { edges } = this.#rooms.walls;
    const [low, high] = [
      Math.min(...edges.map(({ a }) => pick(a))),
      Math.max(...edges.map(({ a }) => pick(a))),
    ];
    const beside = others.flatMap((other) => {
      const spacingM = (diameterM + other.wire.diameterM) / 2;
      const isApart = keepApart(wire, other.wire);
      return stretches(other.route).flatMap((stretch) =>
        stretch.level === level ? [{ ...stretch, spacingM, isApart }] : [],
      );
    });
    // A line that another wire shuts all along what it touches leads nowhere else.
    const leads = (atM: number, from: number, to: number) =>
      !beside.some((one) => Math.abs(one.at - atM) < one.spacingM - 1e-9 && one.from <= from && one.to >= to);
    for (const { at, from, to, spacingM, isApart } of beside)
      for (const side of [-1, 1]) {
        const touchM = at + side * (spacingM + offM);
        if (leads(touchM, from, to)) values.push(touchM);
        if (isApart) values.push(at + side * this.#apartM);
      }
    const inside = values.filter((value) => value > low && value < high).sort((a, b) => a - b);
    const kept = [low - 0.001];
    for (const value of inside) if (value > (kept.at(-1) ?? low) + 1e-7) kept.push(value);
    kept.push(high + 0.001);
    return Float64Array.from(kept);
  }

  #goal(grid: DressGrid, { to, diameterM }: RouteWire, end: Point | null, stubM: number): DressGoal {
    if (isPoint(to)) return { node: end ? nodeOf(grid, end) : -1, way: wayOf(opposite[to.faces]), stubM };
    const way = wayOf(to.exit);
    const level = (way & 1) === 0;
    const rows = level ? grid.ys : grid.xs;
    const edgesM = new Float64Array(rows.length).fill(Number.NaN);
    for (let row = 1; row < rows.length - 1; row += 1) {
      const exit = this.#rooms.exitOn(diameterM, to.exit, rows[row] ?? 0);
      if (!exit) continue;
      edgesM[row] = exit.edgeM;
      const lines = level ? grid.xs : grid.ys;
      const [lowM, highM] = way < 2 ? [exit.fromM, exit.edgeM] : [exit.edgeM, exit.fromM];
      // From the first line in the free stretch to the one beyond the edge.
      let [first, last] = [firstFrom(lines, lowM), firstFrom(lines, highM)];
      if (way >= 2) [first, last] = [first - 1, last - 1];
      for (let line = Math.max(0, first); line < last; line += 1)
        grid.shut[level ? 0 : 1][level ? line * grid.height + row : row * grid.height + line] = 0;
    }
    return { way, edgesM };
  }

  #mark(grid: DressGrid, wire: RouteWire, other: Laid, toll: number): void {
    const spacingM = (wire.diameterM + other.wire.diameterM) / 2;
    const shared = sharedEnds(wire, other.wire);
    const isApart = keepApart(wire, other.wire);
    for (const stretch of stretches(other.route)) {
      grid.shutBeside(stretch, spacingM, shared.length > 0 ? mayShare(stretch, shared) : null);
      grid.crossAt(stretch, toll);
      if (isApart) grid.nearTo(stretch, this.#apartM);
    }
  }
}

function nodeOf(grid: DressGrid, { xM, yM }: Point): number {
  return firstFrom(grid.xs, xM - 1.5e-7) * grid.height + firstFrom(grid.ys, yM - 1.5e-7);
}

/** Signal keeps its distance from power. */
export function keepApart(a: RouteWire, b: RouteWire): boolean {
  return (a.layer === 'signal' && b.layer === 'power') || (a.layer === 'power' && b.layer === 'signal');
}

interface SharedEnd extends Point {
  readonly same: boolean;
}

/** The wire's own ends that the other wire ends near to; `same`: in the same terminal. */
function sharedEnds(wire: RouteWire, other: RouteWire): readonly SharedEnd[] {
  return [wire.from, wire.to].filter(isPoint).flatMap((end): SharedEnd[] => {
    const apartM = Math.min(...[other.from, other.to].filter(isPoint).map((far) => distance(far, end)));
    return apartM < terminalRoomM ? [{ xM: end.xM, yM: end.yM, same: apartM < 1e-6 }] : [];
  });
}

function mayShare({ level, at, from, to }: Stretch, shared: readonly SharedEnd[]): MayShare {
  return (x1, y1, x2, y2) => {
    const across = (level ? y1 : x1) - at;
    const onIt = Math.abs(across) < 1e-6 && (level ? x1 : y1) < to && (level ? x2 : y2) > from;
    return shared.some(
      ({ xM, yM, same }) =>
        (same || !onIt) &&
        Math.hypot(x1 - xM, y1 - yM) < terminalRoomM &&
        Math.hypot(x2 - xM, y2 - yM) < terminalRoomM,
    );
  };
}

/** Lines straight out of the terminals of a wire that does not lie yet. */
function mouthsOf({ from, to, diameterM }: RouteWire, needM: number): Stretch[] {
  return [from, to].filter(isPoint).map((end): Stretch => {
    const out = outFrom(end, end.faces, needM + diameterM + 0.01);
    const level = end.faces === 'left' || end.faces === 'right';
    const [a, b] = level ? [end.xM, out.xM] : [end.yM, out.yM];
    return { level, at: level ? end.yM : end.xM, from: Math.min(a, b), to: Math.max(a, b) };
  });
}
