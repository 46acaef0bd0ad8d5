import { remembered } from '../../../model/once-for.ts';
import { opposite, outward } from '../../layout/item.ts';
import type { Point } from '../../shape/point.ts';
import {
  isPoint,
  outFrom,
  type Route,
  type RouteWire,
  routeThrough,
  type Stretch,
  stretches,
} from '../route.ts';
import type { Laid } from '../tracks.ts';
import { DressGrid, firstFrom, GridMemory } from './dress-grid.ts';
import { type DressRoom, type DressRooms, offM } from './dress-room.ts';
import { DressSearch, wayOf } from './dress-search.ts';
import type { DressGoal, DressStart, WayPrice } from './dress-task.ts';
import { RoomAboutEnds, type SharedEnd, sharedEnds } from './shared-ends.ts';
import { leavingOf, mateOf, togetherM } from './together.ts';

/** So far before a terminal is its plug, or the wire that is put in by hand (m); crossing it there costs besides, in crossings. */
const [plugM, plugToll] = [0.015, 0.15];

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
  /** What was asked of wires and pairs of them before: they stay as they are. */
  readonly #turned = new Map<RouteWire, RouteWire>();
  readonly #shared = new Map<RouteWire, Map<RouteWire, readonly SharedEnd[]>>();
  readonly #plugs = new Map<RouteWire, readonly Stretch[]>();

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
      const turned = this.lay({
        ...task,
        wire: remembered(this.#turned, wire, () => ({ ...wire, from: to, to: from })),
      });
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
    const goal = this.#goal(grid, task, end, needM);
    for (const other of others) this.#mark(grid, wire, other, tollOf(other.wire));
    const mate = mateOf(wire, others);
    if (mate) grid.strayFrom(stretches(mate.route), togetherM);
    for (const one of open)
      for (const mouth of mouthsOf(one, needM + one.diameterM + 0.01)) grid.crossAt(mouth, 1, 0);
    for (const { wire: one } of others)
      for (const plug of remembered(this.#plugs, one, () => mouthsOf(one, plugM)))
        grid.crossAt(plug, 0, plugToll);
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
    const { bendRadiusM = 0 } = wire;
    const pick = (p: Point) => (level ? p.yM : p.xM);
    const values = [...(level ? room.ys : room.xs)];
    for (const gate of gates) values.push(pick(gate));
    for (const end of [wire.from, wire.to]) {
      if (!isPoint(end)) continue;
      const out = pick(outward[end.faces]);
      if (out === 0) values.push(pick(end), pick(end) - 2 * bendRadiusM, pick(end) + 2 * bendRadiusM);
      else values.push(pick(end) + out * bendRadiusM);
    }
    const { minX, minY, maxX, maxY } = this.#rooms.box;
    const [low, high] = level ? [minY, maxY] : [minX, maxX];
    for (const atM of this.#beside(level, wire, others)) values.push(atM);
    // Just beyond the plugs of others.
    for (const { wire: other } of others)
      for (const end of [other.from, other.to]) {
        if (!isPoint(end)) continue;
        const out = pick(outward[end.faces]);
        if (out !== 0) values.push(pick(end) + out * (plugM + wire.diameterM / 2));
      }
    return linesBetween(low, high, Float64Array.from(values).sort());
  }

  /** Lines that touch other wires, and lines at the distance that power and signal keep. */
  #beside(level: boolean, wire: RouteWire, others: readonly Laid[]): number[] {
    const [at, from, to, spacing]: [number[], number[], number[], number[]] = [[], [], [], []];
    const found: number[] = [];
    for (const other of others) {
      const isApart = keepApart(wire, other.wire);
      for (const stretch of stretches(other.route)) {
        if (stretch.level !== level) continue;
        at.push(stretch.at);
        from.push(stretch.from);
        to.push(stretch.to);
        spacing.push((wire.diameterM + other.wire.diameterM) / 2);
        if (isApart) found.push(stretch.at - this.#apartM, stretch.at + this.#apartM);
      }
    }
    for (let one = 0; one < at.length; one += 1)
      for (const side of [-1, 1]) {
        const touchM = (at[one] ?? 0) + side * ((spacing[one] ?? 0) + offM);
        // A line that another wire shuts all along what it touches leads nowhere else.
        let leads = true;
        for (let two = 0; leads && two < at.length; two += 1)
          leads =
            Math.abs((at[two] ?? 0) - touchM) >= (spacing[two] ?? 0) - 1e-9 ||
            (from[two] ?? 0) > (from[one] ?? 0) ||
            (to[two] ?? 0) < (to[one] ?? 0);
        if (leads) found.push(touchM);
      }
    return found;
  }

  #goal(grid: DressGrid, task: LayTask, end: Point | null, stubM: number): DressGoal {
    const { to, diameterM } = task.wire;
    if (isPoint(to)) return { node: end ? nodeOf(grid, end) : -1, way: wayOf(opposite[to.faces]), stubM };
    const way = wayOf(to.exit);
    const level = (way & 1) === 0;
    const rows = level ? grid.ys : grid.xs;
    const edgesM = new Float64Array(rows.length).fill(Number.NaN);
    const tollsM = bundleTolls(task, to.exit, rows);
    const exits = this.#rooms.exitsOn(diameterM, to.exit, rows);
    for (let row = 1; row < rows.length - 1; row += 1) {
      const exit = exits[row];
      if (!exit) continue;
      edgesM[row] = exit.edgeM;
      // Round a corner of the board a way only seems shorter: the wire goes on to the side all the same.
      tollsM[row] = (tollsM[row] ?? 0) + task.price.metre * exit.cornerM;
      const lines = level ? grid.xs : grid.ys;
      const [lowM, highM] = way < 2 ? [exit.fromM, exit.edgeM] : [exit.edgeM, exit.fromM];
      // From the first line in the free stretch to the one beyond the edge.
      let [first, last] = [firstFrom(lines, lowM), firstFrom(lines, highM)];
      if (way >= 2) [first, last] = [first - 1, last - 1];
      for (let line = Math.max(0, first); line < last; line += 1)
        grid.pieces[level ? 0 : 1][level ? line * grid.height + row : row * grid.height + line] = 0;
    }
    return { way, edgesM, tollsM };
  }

  #mark(grid: DressGrid, wire: RouteWire, other: Laid, toll: number): void {
    const spacingM = (wire.diameterM + other.wire.diameterM) / 2;
    const known = remembered(this.#shared, wire, () => new Map());
    const ends = remembered(known, other.wire, () => sharedEnds(wire, other.wire));
    const isApart = keepApart(wire, other.wire);
    for (const stretch of stretches(other.route)) {
      grid.shutBeside(stretch, spacingM, ends.length > 0 ? new RoomAboutEnds(stretch, ends) : null);
      grid.crossAt(stretch, 1, toll);
      if (isApart) grid.nearTo(stretch, this.#apartM);
    }
  }
}

/** The lines between two, in order, none twice, with one just beyond either. */
function linesBetween(low: number, high: number, sorted: Float64Array): Float64Array {
  const kept = new Float64Array(sorted.length + 2);
  let [count, last] = [1, low - 0.001];
  kept[0] = last;
  for (const value of sorted) {
    if (value <= low || value >= high || value <= last + 1e-7) continue;
    [kept[count], last] = [value, value];
    count += 1;
  }
  kept[count] = high + 0.001;
  return kept.slice(0, count + 1);
}

/** What it costs to leave by each line apart from those of the run that leave by the same side already (m). */
function bundleTolls({ wire, others, price }: LayTask, side: string, rows: Float64Array): Float64Array {
  const tollsM = new Float64Array(rows.length);
  const places = others.flatMap((other) => {
    const leaving = wire.run !== undefined && other.wire.run === wire.run ? leavingOf(other) : null;
    return leaving?.side === side ? [leaving.alongM] : [];
  });
  if (places.length === 0) return tollsM;
  return rows.map((row) => (places.some((at) => Math.abs(at - row) <= togetherM) ? 0 : price.bundleM));
}

function nodeOf(grid: DressGrid, { xM, yM }: Point): number {
  return firstFrom(grid.xs, xM - 1.5e-7) * grid.height + firstFrom(grid.ys, yM - 1.5e-7);
}

/** Signal keeps its distance from power. */
export function keepApart(a: RouteWire, b: RouteWire): boolean {
  return (a.layer === 'signal' && b.layer === 'power') || (a.layer === 'power' && b.layer === 'signal');
}

/** Lines straight out of the terminals of a wire. */
function mouthsOf({ from, to }: RouteWire, lengthM: number): Stretch[] {
  return [from, to].filter(isPoint).map((end): Stretch => {
    const out = outFrom(end, end.faces, lengthM);
    const level = end.faces === 'left' || end.faces === 'right';
    const [a, b] = level ? [end.xM, out.xM] : [end.yM, out.yM];
    return { level, at: level ? end.yM : end.xM, from: Math.min(a, b), to: Math.max(a, b) };
  });
}
