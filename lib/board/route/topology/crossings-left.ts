import type { MapWire } from './map-wire.ts';
import { fitsAmong } from './pass.ts';
import type { Places } from './places.ts';
import { type CellRing, endOf, placeOf, type Sketch, sideOf, slotAt, stretchesEach } from './sketch.ts';

/**
 * How many wires at least are still to be crossed from each place of a sketch to where a wire goes: a search back from
 * there that looks at crossings alone, the places with fewest first (Dial 1969).
 */
export class CrossingsLeft {
  #least = new Int16Array(0);
  #buckets: number[][] = [];
  #inside = new Int32Array(0);
  #walk = 0;

  /** Looks back from the end of a wire; `at` answers until the next look. */
  look(sketch: Sketch, places: Places, { to, widthM }: MapWire): void {
    this.#clear(sketch, places);
    const { edges } = sketch.map;
    if ('edge' in to) {
      const passes = sketch.passesAt(to.edge);
      for (let slot = 0; slot <= passes.length; slot += 1)
        if (fitsAmong(passes, slot, { lowM: to.atM, highM: to.atM }, widthM))
          this.#spreadIn(sketch, places, to.cell, to.edge, slot, 0);
    } else
      for (let edge = 0; edge < edges.length; edge += 1) {
        if (edges[edge]?.kind !== 'exit' || edges[edge]?.side !== to.exitSide) continue;
        for (let slot = 0; slot <= sketch.passesAt(edge).length; slot += 1)
          this.#note(places.of(edge, slot), 0);
      }
    this.#spread(sketch, places);
  }

  /** The least number of crossings from a place on; none leads there: a number beyond all. */
  at(place: number): number {
    return this.#least[place] ?? 0;
  }

  #clear(sketch: Sketch, places: Places): void {
    if (this.#least.length < places.count) this.#least = new Int16Array(2 * places.count);
    this.#least.fill(0x7fff, 0, places.count);
    const stretches = sketch.widthsM.length * stretchesEach;
    if (this.#inside.length < stretches) this.#inside = new Int32Array(stretches);
    this.#buckets = [];
  }

  #spread(sketch: Sketch, places: Places): void {
    for (let count = 0; count < this.#buckets.length; count += 1) {
      const bucket = this.#buckets[count] ?? [];
      for (let at = 0; at < bucket.length; at += 1) {
        const place = bucket[at] ?? 0;
        if (this.at(place) !== count) continue;
        const edge = places.edgeOf(place);
        const cells = sketch.map.edges[edge]?.cells ?? [-1, -1];
        for (const cell of cells)
          if (cell >= 0) this.#spreadIn(sketch, places, cell, edge, places.slotOf(place), count);
      }
    }
  }

  /** From one place on the border of a cell to every other. */
  #spreadIn(sketch: Sketch, places: Places, cell: number, edge: number, slot: number, count: number): void {
    const ring = sketch.ringOf(cell);
    const from = sideOf(sketch.map, cell, edge);
    this.#walk += 1;
    let crossed = 0;
    for (let at = placeOf(ring, from, slot); at < endOf(ring, from); at += 1)
      crossed += this.#toggle(ring, at);
    for (let turn = 1; turn < 4; turn += 1) {
      const side = (from + turn) & 3;
      const [first, end] = [ring.starts[side] ?? 0, endOf(ring, side)];
      const beyond = sketch.map.edgeOf[cell * 4 + side] ?? -1;
      const leads = sketch.map.edges[beyond]?.kind === 'portal';
      for (let at = first; at <= end; at += 1) {
        if (leads) this.#note(places.of(beyond, slotAt(first, end, side, at)), count + crossed);
        if (at < end) crossed += this.#toggle(ring, at);
      }
    }
  }

  #toggle({ stretches }: CellRing, at: number): number {
    const stretch = stretches[at] ?? -1;
    if (stretch < 0) return 0;
    const isIn = this.#inside[stretch] === this.#walk;
    this.#inside[stretch] = isIn ? 0 : this.#walk;
    return isIn ? -1 : 1;
  }

  #note(place: number, count: number): void {
    if (count >= this.at(place)) return;
    this.#least[place] = count;
    const bucket = this.#buckets[count];
    if (bucket) bucket.push(place);
    else {
      while (this.#buckets.length < count) this.#buckets.push([]);
      this.#buckets[count] = [place];
    }
  }
}
