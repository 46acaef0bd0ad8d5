import type { Sketch } from './sketch.ts';

/**
 * Numbers for the places between the wires that pass each edge of a sketch as it is now: of an edge that n wires pass
 * there are n + 1, from below or from the left.
 */
export class Places {
  readonly #base: Int32Array;
  readonly #edges: Int32Array;
  readonly count: number;

  constructor(sketch: Sketch) {
    const { edges } = sketch.map;
    this.#base = new Int32Array(edges.length + 1);
    let next = 0;
    for (let edge = 0; edge < edges.length; edge += 1) {
      this.#base[edge] = next;
      next += sketch.passesAt(edge).length + 1;
    }
    this.#base[edges.length] = next;
    this.#edges = new Int32Array(next);
    for (let edge = 0; edge < edges.length; edge += 1)
      this.#edges.fill(edge, this.#base[edge], this.#base[edge + 1]);
    this.count = next;
  }

  of(edge: number, slot: number): number {
    return (this.#base[edge] ?? 0) + slot;
  }

  edgeOf(place: number): number {
    return this.#edges[place] ?? 0;
  }

  slotOf(place: number): number {
    return place - (this.#base[this.edgeOf(place)] ?? 0);
  }
}
