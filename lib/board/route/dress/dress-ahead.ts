import { type DressGrid, shutBit } from './dress-grid.ts';

/**
 * How many wires have to be crossed at least from each crossing of lines to where a wire goes, bends and lengths left
 * aside: a search back from there, fewest crossings first (Dial 1969).
 */
export class DressAhead {
  /** No node that was not reached is nearer than this. */
  beyond = 0;
  #least = new Int16Array(0);
  /** Nodes of the crossings at hand whose neighbours are still to be looked at. */
  #stack = new Int32Array(0);
  #height = 0;
  /** Nodes by the crossings with which they can be reached, beyond those at hand. */
  #levels: number[][] = [];

  at(node: number): number {
    const known = this.#least[node] ?? -1;
    return known < 0 ? this.beyond : known;
  }

  /** Searches back from some nodes, each with the crossings beyond it, until the start is reached; false where it is not. */
  look(grid: DressGrid, goals: readonly (readonly [number, number])[], start: number): boolean {
    const size = grid.width * grid.height;
    if (this.#least.length < size) {
      this.#least = new Int16Array(2 * size);
      this.#stack = new Int32Array(2 * size);
    }
    this.#least.fill(-1, 0, size);
    this.#levels = [];
    for (const [node, count] of goals) this.#keep(node, count);
    for (let level = 0; level < this.#levels.length; level += 1) {
      this.beyond = level;
      this.#height = 0;
      for (const node of this.#levels[level] ?? []) this.#reach(node, level);
      while (this.#height > 0) {
        this.#height -= 1;
        const node = this.#stack[this.#height] ?? 0;
        if (node === start) return true;
        this.#back(grid, node, level);
      }
    }
    return false;
  }

  #back({ width, height, pieces: [level, upright], crossed }: DressGrid, node: number, count: number): void {
    const column = (node / height) | 0;
    const row = node - column * height;
    if (column > 0) this.#step(level, crossed[0], node - height, node - height, count);
    if (column < width - 1) this.#step(level, crossed[0], node, node + height, count);
    if (row > 0) this.#step(upright, crossed[1], node - 1, node - 1, count);
    if (row < height - 1) this.#step(upright, crossed[1], node, node + 1, count);
  }

  /** Goes back along a piece, to the node beyond it. */
  #step(pieces: Uint8Array, crossed: Uint8Array, piece: number, node: number, count: number): void {
    if (((pieces[piece] ?? 0) & shutBit) !== 0) return;
    const more = crossed[piece] ?? 0;
    if (more === 0) this.#reach(node, count);
    else this.#keep(node, count + more);
  }

  #reach(node: number, count: number): void {
    if ((this.#least[node] ?? 0) >= 0) return;
    this.#least[node] = count;
    this.#stack[this.#height] = node;
    this.#height += 1;
  }

  #keep(node: number, count: number): void {
    if ((this.#least[node] ?? 0) >= 0) return;
    while (this.#levels.length <= count) this.#levels.push([]);
    this.#levels[count]?.push(node);
  }
}
