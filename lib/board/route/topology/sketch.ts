import type { BoardMap } from './board-map.ts';
import { anywhere, type Pass, type PassRange } from './pass.ts';

/** How a wire goes through one cell: round a corner, straight, or straight with a step to one side. */
export type Passage = 'turn' | 'level' | 'upright' | 'step';

/** The way of a wire through the map: edge, cell, edge, ... edge. */
export interface Way {
  readonly edges: readonly number[];
  /** Its place among those that pass each edge. */
  readonly slots: readonly number[];
  readonly ranges: readonly PassRange[];
  readonly cells: readonly number[];
  readonly passages: readonly Passage[];
  /** Its length and bends alone, in metres of wire. */
  readonly bareM: number;
}

const none: readonly Pass[] = [];

/**
 * How wires run through the map, with no widths and no places yet: their ways, and the order in which they pass each
 * edge. Two wires cross in a cell where their ends alternate round it.
 */
export class Sketch {
  readonly map: BoardMap;
  readonly widthsM: readonly number[];
  readonly #passes: (readonly Pass[])[];
  readonly #ways: (Way | null)[];
  /** What passes each narrow place (m). */
  readonly #loadsM: Float64Array;
  /** The rings of cells that were asked for since something changed there. */
  readonly #rings: (CellRing | null)[];

  constructor(map: BoardMap, widthsM: readonly number[], from?: Sketch) {
    this.map = map;
    this.widthsM = widthsM;
    this.#passes = from ? [...from.#passes] : map.edges.map(() => none);
    this.#ways = from ? [...from.#ways] : widthsM.map(() => null);
    this.#loadsM = from ? from.#loadsM.slice() : new Float64Array(map.roomsM.length);
    this.#rings = from ? [...from.#rings] : Array.from(map.open, () => null);
  }

  copy(): Sketch {
    return new Sketch(this.map, this.widthsM, this);
  }

  passesAt(edge: number): readonly Pass[] {
    return this.#passes[edge] ?? none;
  }

  /** The stretches of wires through a cell. */
  ringOf(cell: number): CellRing {
    const ring = this.#rings[cell] ?? ringOf(this, cell);
    this.#rings[cell] = ring;
    return ring;
  }

  wayOf(wire: number): Way | null {
    return this.#ways[wire] ?? null;
  }

  /** Of a wire so wide, what would not go through the narrow place of an edge any more (m); 0 where it has room. */
  overflowM(edge: number, widthM: number, clearanceM: number): number {
    let lackM = 0;
    for (const cut of this.map.edges[edge]?.cuts ?? []) {
      const needM = (this.#loadsM[cut] ?? 0) + widthM + 2 * clearanceM;
      lackM = Math.max(lackM, needM - (this.map.roomsM[cut] ?? 0));
    }
    return lackM;
  }

  lay(wire: number, way: Way): void {
    this.#ways[wire] = way;
    way.edges.forEach((edge, at) => {
      const pass = { wire, at, range: way.ranges[at] ?? anywhere, widthM: this.widthsM[wire] ?? 0 };
      this.#passes[edge] = this.passesAt(edge).toSpliced(way.slots[at] ?? 0, 0, pass);
    });
    this.#load(way, this.widthsM[wire] ?? 0);
  }

  /** Takes a wire up; its way comes with the places that it had last, so that it can be laid again as it was. */
  takeUp(wire: number): Way | null {
    const way = this.wayOf(wire);
    if (!way) return null;
    const slots: number[] = [];
    way.edges.toReversed().forEach((edge, back) => {
      const at = way.edges.length - 1 - back;
      const passes = this.passesAt(edge);
      const slot = passes.findIndex((pass) => pass.wire === wire && pass.at === at);
      slots.unshift(slot);
      this.#passes[edge] = passes.toSpliced(slot, 1);
    });
    this.#ways[wire] = null;
    this.#load(way, -(this.widthsM[wire] ?? 0));
    return { ...way, slots };
  }

  /** Notes that a way was laid or taken up: its width at narrow places, and that its cells have changed. */
  #load({ edges }: Way, widthM: number): void {
    for (const edge of edges) {
      const { cuts, cells } = this.map.edges[edge] ?? { cuts: [], cells: [] };
      for (const cell of cells) if (cell >= 0) this.#rings[cell] = null;
      for (const cut of cuts) this.#loadsM[cut] = (this.#loadsM[cut] ?? 0) + widthM;
    }
  }
}

/** The stretches of wires through one cell by where they meet its border, counter-clockwise from its lower right corner. */
export interface CellRing {
  /** The stretch that ends at each place: `wire * 256 + its number`, or -1 where a wire only begins there to the other side. */
  readonly stretches: Int32Array;
  /** How each of them goes through the cell: 1 straight and level, 2 straight and upright, 0 otherwise. */
  readonly straight: Uint8Array;
  /** Where each side begins, in the order right, top, left, bottom, and the end of all. */
  readonly starts: readonly number[];
}

/** Stretches of one wire are told apart by so many. */
export const stretchesEach = 256;

/** The ring of a cell as wires lie now. */
function ringOf(sketch: Sketch, cell: number): CellRing {
  const stretches: number[] = [];
  const straight: number[] = [];
  const starts = [0];
  for (let side = 0; side < 4; side += 1) {
    const passes = sketch.passesAt(sketch.map.edgeOf[cell * 4 + side] ?? -1);
    // Right and bottom sides are gone along from low to high, top and left ones from high to low.
    const isUp = side === 0 || side === 3;
    for (let k = 0; k < passes.length; k += 1) {
      const pass = passes[isUp ? k : passes.length - 1 - k];
      if (!pass) continue;
      const stretch = stretchOf(sketch, pass, cell);
      stretches.push(stretch);
      straight.push(stretch < 0 ? 0 : straightness(sketch, stretch));
    }
    starts.push(stretches.length);
  }
  return { stretches: Int32Array.from(stretches), straight: Uint8Array.from(straight), starts };
}

function straightness(sketch: Sketch, stretch: number): number {
  const wire = Math.floor(stretch / stretchesEach);
  const passage = sketch.wayOf(wire)?.passages[stretch - wire * stretchesEach];
  return passage === 'level' ? 1 : passage === 'upright' ? 2 : 0;
}

function stretchOf(sketch: Sketch, { wire, at }: Pass, cell: number): number {
  const cells = sketch.wayOf(wire)?.cells;
  if (cells?.[at] === cell) return wire * stretchesEach + at;
  return cells?.[at - 1] === cell ? wire * stretchesEach + at - 1 : -1;
}

/** Which side of a cell an edge is: right, top, left or bottom. */
export function sideOf({ edgeOf }: BoardMap, cell: number, edge: number): number {
  for (let side = 0; side < 3; side += 1) if (edgeOf[cell * 4 + side] === edge) return side;
  return 3;
}

/** The end of a side on a ring. */
export function endOf({ starts }: CellRing, side: number): number {
  return starts[side + 1] ?? 0;
}

/** The place on a ring of a slot of a side: slots are counted from low to high, places counter-clockwise. */
export function placeOf(ring: CellRing, side: number, slot: number): number {
  return side === 0 || side === 3 ? (ring.starts[side] ?? 0) + slot : endOf(ring, side) - slot;
}

/** The slot of a side at a place of its ring. */
export function slotAt(first: number, end: number, side: number, place: number): number {
  return side === 0 || side === 3 ? place - first : end - place;
}
