import type { LaneBoard, LaneJam } from './lanes/lane.ts';
import type { LaidLegs, LaneWire } from './lanes/lane-wire.ts';
import { Lanes } from './lanes/lanes.ts';
import { legsOf } from './lanes/legs.ts';
import { heldIn } from './lanes/split.ts';
import type { BoardMap } from './topology/board-map.ts';
import type { MapWire } from './topology/map-wire.ts';
import type { Sketch } from './topology/sketch.ts';
import type { SketchSearch } from './topology/sketch-search.ts';

/** What lanes are searched for. */
export interface LaneTask {
  readonly board: LaneBoard;
  readonly search: SketchSearch;
  readonly wires: readonly MapWire[];
  readonly laneWires: readonly LaneWire[];
}

/** How a sketch is put into lanes: with the ways that it came to, the lanes of each wire, null for one without. */
export interface InLanes {
  readonly sketch: Sketch;
  readonly laid: readonly (LaidLegs | null)[];
}

/** Times that room is looked for, for one wire: each time another wire of the jam gives way; and in all, for each wire. */
const [mostTries, mostTriesEach] = [12, 3];
/** What passing again where there was no room costs a wire (m of wire): there, and anywhere on its way. */
const [avoidThereM, avoidAnywhereM] = [1, 0.3];
/** Along a lane, how far beyond where it is held its wire gives way (m). */
const besideM = 0.03;

/**
 * Puts the wires of a sketch into lanes: all at once, or where there is no room for that, one after the other in an order.
 * Where one finds no room, it or another in the jam is laid anew in the sketch, elsewhere; what finds none at last is left
 * out. Shares: of its bend radius, which each wire has at least.
 */
export class LaneSearch {
  readonly #task: LaneTask;
  #sketch: Sketch;
  #laid: readonly (LaidLegs | null)[] = [];
  readonly #in = new Set<number>();
  readonly #shares: number[];
  /** Tries that are left. */
  #left: number;

  constructor(task: LaneTask, sketch: Sketch) {
    this.#task = task;
    this.#sketch = sketch;
    this.#shares = task.wires.map(() => 1);
    this.#left = mostTriesEach * task.wires.length;
  }

  get found(): InLanes {
    return { sketch: this.#sketch, laid: this.#laid };
  }

  /** Puts those in that are not; `share`: how much of its bend radius each is to have. */
  putIn(order: readonly number[], share: number): void {
    const open = order.filter((wire) => !this.#in.has(wire));
    for (const wire of open) this.#shares[wire] = share;
    if (this.#left <= 0) return;
    if (open.length < 2 || this.#tryWith(open) !== null)
      for (const wire of open) {
        const jam = this.#tryWith([wire]);
        if (jam) this.#findRoom(wire, jam);
      }
  }

  /** Puts some wires in beside the others; where there is no room, the jam, and all is as before. */
  #tryWith(some: readonly number[]): LaneJam | null {
    const part = this.#sketch.copy();
    this.#task.wires.forEach((_, wire) => {
      if (!this.#in.has(wire) && !some.includes(wire)) part.takeUp(wire);
    });
    const legs = legsOf(part);
    const wires = this.#task.laneWires.map((wire, at) => {
      return { wire, legs: legs[at] ?? [], share: this.#shares[at] ?? 1 };
    });
    let jam: LaneJam | null = null;
    for (const levelFirst of [true, false]) {
      const lanes = new Lanes(this.#task.board, wires);
      const found = lanes.settle(levelFirst);
      jam ??= found;
      if (found) continue;
      this.#laid = lanes.laid;
      for (const wire of some) this.#in.add(wire);
      return null;
    }
    return jam;
  }

  #findRoom(wire: number, first: LaneJam): void {
    const before = this.#sketch;
    this.#sketch = before.copy();
    let jam: LaneJam | null = first;
    for (let tries = 0; jam && tries < mostTries && this.#left > 0; tries += 1) {
      this.#left -= 1;
      this.#giveWay(jam, this.#whoGivesWay(jam, wire, tries));
      jam = this.#tryWith([wire]);
    }
    if (jam) this.#sketch = before;
  }

  /** The wire itself where it is in the jam, then the others there, thin ones first. */
  #whoGivesWay(jam: LaneJam, wire: number, tries: number): number {
    const widthOf = (one: number) => this.#task.wires[one]?.widthM ?? 0;
    const inJam = [...new Set(jam.map((lane) => lane.wire))];
    const others = inJam.filter((one) => one !== wire).toSorted((a, b) => widthOf(a) - widthOf(b) || a - b);
    const all = inJam.includes(wire) ? [wire, ...others] : [...others, wire];
    return all[tries % all.length] ?? wire;
  }

  /** Lays a wire anew in the sketch, so that it rather avoids the place of a jam. */
  #giveWay(jam: LaneJam, wire: number): void {
    const { search, wires } = this.#task;
    const { map } = this.#sketch;
    const [own, way] = [wires[wire], this.#sketch.wayOf(wire)];
    if (!own || !way) return;
    const inner = way.edges.slice(1, -1);
    const there = inner.filter((edge) => isInJam(map, edge, jam, wire));
    const [some, byM] = there.length > 0 ? [there, avoidThereM] : [inner, avoidAnywhereM];
    for (const edge of some) own.avoidM[edge] = (own.avoidM[edge] ?? 0) + byM;
    search.layAnew(this.#sketch, [wire]);
  }
}

/** True where a wire passes an edge in a lane of a jam, near where that is held. */
function isInJam({ edges, xs, ys }: BoardMap, edge: number, jam: LaneJam, wire: number): boolean {
  const own = edges[edge];
  const { lows, highs } = heldIn(jam);
  return jam.some(({ wire: other, leg }, at) => {
    if (!own || other !== wire || own.upright !== leg.level) return false;
    const held = [...(lows[at] ?? []), ...(highs[at] ?? [])];
    const isNear = own.lineM > Math.min(...held) - besideM && own.lineM < Math.max(...held) + besideM;
    return isNear && Math.abs(((leg.level ? ys : xs)[leg.line] ?? 0) - own.fromM) < 1e-9;
  });
}
