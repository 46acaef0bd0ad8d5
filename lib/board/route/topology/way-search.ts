import { CheapestFirst } from '../queue.ts';
import type { BoardMap } from './board-map.ts';
import { CrossingsLeft } from './crossings-left.ts';
import type { MapTerminal, MapWire, WayCosts } from './map-wire.ts';
import { anywhere, common, fitsAmong, type PassRange } from './pass.ts';
import { Places } from './places.ts';
import {
  type CellRing,
  endOf,
  placeOf,
  type Sketch,
  sideOf,
  slotAt,
  stretchesEach,
  type Way,
} from './sketch.ts';
import { leastLeft, lengthThrough, type Step, wayThrough } from './way-lengths.ts';
import { acrossEdge, beside, inLine } from './way-ranges.ts';

/** One search on its way. */
interface Task {
  readonly sketch: Sketch;
  readonly places: Places;
  readonly wire: MapWire;
  readonly costs: WayCosts;
  /** What a bend of this wire costs (m). */
  readonly bendM: number;
  readonly most: number;
  /** The least that is left to go from an edge (m). */
  readonly leastM: Float64Array;
  /** The terminal that is gone to; null where the wire leaves the board. */
  readonly goal: MapTerminal | null;
  /** Half the wire and the free room beside it (m). */
  readonly needM: number;
  /** Where it may run after its first bend. */
  readonly afterFirst: PassRange;
}

/** Where a cell is gone into. */
interface Entry {
  readonly cell: number;
  readonly side: number;
  readonly slot: number;
  /** How often the wire was bent so far: 0, 1, or 2 for more. */
  readonly bends: number;
  readonly cost: number;
  /** The straight wire up to there since the last bend that there may be (m). */
  readonly runM: number;
  /** Between what this straight piece may lie, as far as it has come. */
  readonly range: PassRange;
  /** The state that stands there; below zero, at the first terminal: -1 less the slot. */
  readonly state: number;
}

/** Where it is gone to: the side of the cell, its edge, the place there. */
interface Exit {
  readonly side: number;
  readonly edge: number;
  readonly slot: number;
  readonly isGoal: boolean;
}

/** How a cell is gone through, by number. */
const [turned, level, upright, stepped] = [0, 1, 2, 3];

/**
 * The cheapest way of one wire through a sketch that stays as it is otherwise: Dijkstra's algorithm (1959) over the
 * places between the wires that pass each edge, with the least distance and the least crossings that are left as a
 * lower bound (A*, Hart, Nilsson and Raphael 1968). The stretches with one end between two places on the border of a
 * cell are those that a wire from the one to the other crosses.
 */
export class WaySearch {
  readonly #queue = new CheapestFirst();
  readonly #left = new CrossingsLeft();
  /** By state: eight a place, for either direction and the number of bends so far. */
  #cost = new Float64Array(0);
  #before = new Int32Array(0);
  /** The straight wire up to each state since its last bend, or its terminal (m). */
  #runM = new Float64Array(0);
  /** Between what the straight piece that leads to each state may lie (m). */
  #lowM = new Float64Array(0);
  #highM = new Float64Array(0);
  /** How the cell before was gone through: the number of the passage, and four times the crossings in it. */
  #how = new Int32Array(0);
  /** By stretch: the walk round a cell in which its one end was passed last, and not yet the other. */
  #inside = new Int32Array(0);
  #walk = 0;
  /** Of the walk round a cell so far: crossings, and those with what runs straight level and upright. */
  readonly #crossed = new Int32Array(3);

  /** The cheapest way of a wire that does not lie in the sketch; null where there is none below a cost. */
  find(sketch: Sketch, wire: MapWire, costs: WayCosts, most: number): Way | null {
    const places = new Places(sketch);
    this.#clear(places.count * 8, sketch.widthsM.length * stretchesEach);
    this.#left.look(sketch, places, wire);
    const bendM = costs.bendM + costs.bendRadii * wire.bendRadiusM;
    const goal = 'edge' in wire.to ? wire.to : null;
    const needM = wire.widthM / 2 + costs.clearanceM;
    const afterFirst = beside(sketch.map, wire.from, wire.bendRadiusM);
    const task = {
      sketch,
      places,
      wire,
      costs,
      bendM,
      most,
      leastM: leastLeft(sketch.map, wire),
      goal,
      needM,
      afterFirst,
    };
    const { edge, cell } = wire.from;
    const passes = sketch.passesAt(edge);
    const side = sideOf(sketch.map, cell, edge);
    for (let slot = 0; slot <= passes.length; slot += 1)
      if (fitsAmong(passes, slot, inLine(wire.from), wire.widthM))
        this.#expand(task, {
          cell,
          side,
          slot,
          bends: 0,
          cost: 0,
          runM: 0,
          range: inLine(wire.from),
          state: -1 - slot,
        });
    return this.#go(task);
  }

  #clear(states: number, stretches: number): void {
    this.#queue.clear();
    if (this.#cost.length < states) {
      this.#cost = new Float64Array(2 * states);
      this.#before = new Int32Array(2 * states);
      this.#runM = new Float64Array(2 * states);
      this.#lowM = new Float64Array(2 * states);
      this.#highM = new Float64Array(2 * states);
      this.#how = new Int32Array(2 * states);
    }
    this.#cost.fill(Infinity, 0, states);
    if (this.#inside.length < stretches) this.#inside = new Int32Array(stretches);
  }

  #go(task: Task): Way | null {
    const { sketch, places, goal } = task;
    for (let state = this.#queue.pop(); state !== undefined; state = this.#queue.pop()) {
      const place = state >> 3;
      const edge = places.edgeOf(place);
      const own = sketch.map.edges[edge];
      const cell = own?.cells[(state & 4) === 0 ? 1 : 0] ?? -1;
      if (own?.kind === 'exit' || (goal?.edge === edge && goal.cell !== cell))
        return this.#trace(task, state);
      const side = sideOf(sketch.map, cell, edge);
      const cost = this.#cost[state] ?? 0;
      const [bends, runM] = [state & 3, this.#runM[state] ?? 0];
      const range = { lowM: this.#lowM[state] ?? 0, highM: this.#highM[state] ?? 0 };
      this.#expand(task, { cell, side, slot: places.slotOf(place), bends, cost, runM, range, state });
    }
    return null;
  }

  /** Goes from one place on the border of a cell to every other. */
  #expand(task: Task, entry: Entry): void {
    const { map } = task.sketch;
    const ring = task.sketch.ringOf(entry.cell);
    this.#walk += 1;
    this.#crossed.fill(0);
    for (let at = placeOf(ring, entry.side, entry.slot); at < endOf(ring, entry.side); at += 1)
      this.#toggle(ring, at);
    for (let turn = 1; turn < 4; turn += 1) {
      const side = (entry.side + turn) & 3;
      const edge = map.edgeOf[entry.cell * 4 + side] ?? -1;
      const isGoal = task.goal?.edge === edge && task.goal.cell === entry.cell;
      const leads = isGoal || this.#leads(task, edge, side);
      const [first, end] = [ring.starts[side] ?? 0, endOf(ring, side)];
      for (let at = first; at <= end; at += 1) {
        if (leads) this.#through(task, entry, { side, edge, slot: slotAt(first, end, side, at), isGoal });
        if (at < end) this.#toggle(ring, at);
      }
    }
  }

  /** True where an edge leads on, or off the board where the wire leaves it. */
  #leads({ sketch, wire }: Task, edge: number, side: number): boolean {
    const own = sketch.map.edges[edge];
    return (
      own?.kind === 'portal' || (own?.kind === 'exit' && 'exitSide' in wire.to && wire.to.exitSide === side)
    );
  }

  #toggle({ stretches, straight }: CellRing, at: number): void {
    const stretch = stretches[at] ?? -1;
    if (stretch < 0) return;
    const by = this.#inside[stretch] === this.#walk ? -1 : 1;
    this.#inside[stretch] = by > 0 ? this.#walk : 0;
    this.#crossed[0] = (this.#crossed[0] ?? 0) + by;
    const along = straight[at] ?? 0;
    if (along > 0) this.#crossed[along] = (this.#crossed[along] ?? 0) + by;
  }

  /** Notes the ways to a place on the border of a cell: round a corner, or straight and with a step. */
  #through(task: Task, entry: Entry, exit: Exit): void {
    const { sketch, goal, wire } = task;
    const passes = sketch.passesAt(exit.edge);
    const there = exit.isGoal && goal ? inLine(goal) : acrossEdge(sketch.map, exit.edge, task.needM);
    const mayPass = (range: PassRange) =>
      range.lowM <= range.highM + 1e-6 && fitsAmong(passes, exit.slot, range, wire.widthM);
    const bent = (bends: number) => common(there, bends === 1 ? task.afterFirst : anywhere);
    if (((entry.side + 2) & 3) !== exit.side) {
      const range = exit.isGoal ? there : bent(entry.bends + 1);
      if (mayPass(range)) this.#note(task, entry, exit, turned, range);
      return;
    }
    const along = (exit.side & 1) === 0 ? level : upright;
    const range = common(entry.range, there);
    // Who runs straight beside another wire can't change places with it.
    const isFree = (this.#crossed[along] ?? 0) === 0 && mayPass(range);
    if (isFree) this.#note(task, entry, exit, along, range);
    if ((!isFree || exit.isGoal) && mayPass(there)) this.#note(task, entry, exit, stepped, there);
  }

  #note(
    { sketch, places, wire, costs, bendM, most, leastM }: Task,
    entry: Entry,
    exit: Exit,
    passage: number,
    range: PassRange,
  ): void {
    const crossings = this.#crossed[0] ?? 0;
    const bends = passage === turned ? 1 : passage === stepped ? 2 : 0;
    const lengthM = lengthThrough(sketch.map, entry.cell, entry.side, exit.side);
    const fullM = exit.isGoal ? 0 : crowdingM(sketch, exit.edge, wire, costs);
    const room = roomForBends(sketch.map, wire, entry, exit, passage, lengthM);
    const tightM = room.isTight ? costs.tightM : 0;
    const cost = entry.cost + lengthM + bends * bendM + crossings * costs.crossingM + fullM + tightM;
    const place = places.of(exit.edge, exit.slot);
    const leftM = exit.isGoal ? 0 : (leastM[exit.edge] ?? 0) + this.#left.at(place) * costs.crossingM;
    if (cost + leftM >= most) return;
    const back = exit.side < 2 ? 0 : 4;
    const state = place * 8 + back + Math.min(2, entry.bends + bends);
    if (cost >= (this.#cost[state] ?? Infinity) - 1e-12) return;
    this.#cost[state] = cost;
    this.#before[state] = entry.state;
    this.#runM[state] = room.runM;
    this.#lowM[state] = range.lowM;
    this.#highM[state] = range.highM;
    this.#how[state] = passage + 4 * crossings;
    this.#queue.push(state, cost + leftM);
  }

  /** The way that ends in a state, told from its beginning. */
  #trace({ sketch, places, wire, costs }: Task, last: number): Way {
    const steps: Step[] = [];
    let state = last;
    for (; state >= 0; state = this.#before[state] ?? -1) {
      const [place, how] = [state >> 3, this.#how[state] ?? 0];
      const edge = places.edgeOf(place);
      const fullM = crowdingM(sketch, edge, wire, costs);
      steps.unshift({ edge, slot: places.slotOf(place), passage: how & 3, crossings: how >> 2, fullM });
    }
    const { edge } = wire.from;
    return wayThrough(sketch.map, wire, { edge, slot: -1 - state }, steps, this.#cost[last] ?? 0, costs);
  }
}

/** What it costs a wire to pass an edge where it found no room before or has none now; of one that lies there, its width is 0. */
export function crowdingM(
  sketch: Sketch,
  edge: number,
  { widthM, avoidM }: Pick<MapWire, 'widthM' | 'avoidM'>,
  costs: WayCosts,
): number {
  const lackM = sketch.overflowM(edge, widthM, costs.clearanceM);
  return (avoidM[edge] ?? 0) + (lackM > 1e-6 ? costs.fullM + lackM * costs.lackM : 0);
}

/**
 * Whether the bends of a wire have room as it goes through a cell, as far as parts and edges tell; and the straight wire
 * that there may be since the last of them (m).
 */
function roomForBends(
  { reachM }: BoardMap,
  { bendRadiusM, to }: MapWire,
  { cell, side, runM, bends }: Entry,
  exit: Exit,
  passage: number,
  lengthM: number,
): { readonly runM: number; readonly isTight: boolean } {
  const ahead = cell * 4 + ((side + 2) & 3);
  const isBent = passage === turned || passage === stepped;
  // From what stands behind, through the cell.
  const nowM = isBent ? (reachM[cell * 4 + ((exit.side + 2) & 3)] ?? 0) : runM + lengthM;
  const leastM = bends === 0 ? bendRadiusM : 2 * bendRadiusM;
  const isTight = isBent && runM + (reachM[ahead] ?? 0) < leastM;
  const ends = exit.isGoal || ('exitSide' in to && to.exitSide === exit.side && passage !== turned);
  return { runM: nowM, isTight: isTight || (ends && !(bends === 0 && !isBent) && nowM < bendRadiusM) };
}
