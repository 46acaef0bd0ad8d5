import type { Ground } from './gates.ts';
import type { Tracks } from './tracks.ts';

/**
 * How many wires have to be crossed at least from each point of a grid to the nearest of some goals, bends and lengths
 * left aside: a search backwards from the goals, fewest crossings first (Dial 1969). A lower bound that lets a path
 * search leave alone what lies beyond one wire more.
 */
export class CrossingsAhead {
  /** No point that was not reached is nearer than this. */
  beyond = 0;
  readonly #ahead: Int32Array;
  readonly #width: number;
  readonly #height: number;
  #levels: number[][] = [];
  /** Points of the crossings at hand whose neighbours are still to be looked at. */
  readonly #stack: Int32Array;
  #count = 0;

  constructor({ xs, ys }: Ground['grid']) {
    [this.#width, this.#height] = [xs.length, ys.length];
    this.#ahead = new Int32Array(xs.length * ys.length);
    this.#stack = new Int32Array(xs.length * ys.length);
  }

  /** At least so many crossings lie between a point and the goals. */
  at(node: number): number {
    const known = this.#ahead[node] ?? -1;
    return known < 0 ? this.beyond : known;
  }

  /** Searches back from the goals until the start is reached; false where there is no way at all. */
  look(ground: Ground, tracks: Tracks, goals: Iterable<number>, start: number): boolean {
    this.#ahead.fill(-1);
    this.#levels = [[...goals]];
    for (let level = 0; level < this.#levels.length; level += 1) {
      this.beyond = level;
      this.#count = 0;
      for (const node of this.#levels[level] ?? []) this.#reach(node, level);
      while (this.#count > 0) {
        this.#count -= 1;
        const node = this.#stack[this.#count] ?? 0;
        if (node === start) return true;
        this.#back(ground, tracks, node, level);
      }
    }
    return false;
  }

  /** The points from which one step leads to a node. */
  #back({ open, through }: Ground, { taken, crossed }: Tracks, node: number, level: number): void {
    const height = this.#height;
    const column = (node / height) | 0;
    const row = node - column * height;
    if (through || taken[0][node] === 0) {
      const next = level + (crossed[1][node] ?? 0);
      const free = through ? null : taken[0];
      if (column > 0) this.#offer(open, free, node - height, level, next);
      if (column < this.#width - 1) this.#offer(open, free, node + height, level, next);
    }
    if (through || taken[1][node] === 0) {
      const next = level + (crossed[0][node] ?? 0);
      const free = through ? null : taken[1];
      if (row > 0) this.#offer(open, free, node - 1, level, next);
      if (row < height - 1) this.#offer(open, free, node + 1, level, next);
    }
  }

  #offer(open: Uint8Array, taken: Uint8Array | null, node: number, level: number, next: number): void {
    if (open[node] !== 1 || taken?.[node] === 1 || (this.#ahead[node] ?? 0) >= 0) return;
    if (next === level) {
      this.#reach(node, level);
      return;
    }
    // Levels in between stay empty, so that they are gone through in order.
    while (this.#levels.length <= next) this.#levels.push([]);
    this.#levels[next]?.push(node);
  }

  #reach(node: number, level: number): void {
    if ((this.#ahead[node] ?? 0) >= 0) return;
    this.#ahead[node] = level;
    this.#stack[this.#count] = node;
    this.#count += 1;
  }
}
