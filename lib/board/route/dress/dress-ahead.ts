import type { DressGrid } from './dress-grid.ts';

/**
 * How many wires have to be crossed at least from each crossing of lines to where a wire goes, bends and lengths left
 * aside: a search back from there, fewest crossings first (Dial 1969).
 */
export class DressAhead {
  /** No node that was not reached is nearer than this. */
  beyond = 0;
  #least = new Int16Array(0);
  #levels: number[][] = [];

  at(node: number): number {
    const known = this.#least[node] ?? -1;
    return known < 0 ? this.beyond : known;
  }

  /** Searches back from some nodes, each with the crossings beyond it, until the start is reached; false where it is not. */
  look(grid: DressGrid, goals: readonly (readonly [number, number])[], start: number): boolean {
    const size = grid.width * grid.height;
    if (this.#least.length < size) this.#least = new Int16Array(2 * size);
    this.#least.fill(-1, 0, size);
    this.#levels = [];
    for (const [node, count] of goals) this.#put(node, count);
    for (let level = 0; level < this.#levels.length; level += 1) {
      this.beyond = level;
      const list = this.#levels[level] ?? [];
      for (let node = list.pop(); node !== undefined; node = list.pop()) {
        if ((this.#least[node] ?? 0) >= 0) continue;
        this.#least[node] = level;
        if (node === start) return true;
        this.#back(grid, node, level);
      }
    }
    return false;
  }

  #back({ width, height, shut, crossed }: DressGrid, node: number, level: number): void {
    const column = Math.floor(node / height);
    const row = node - column * height;
    if (column > 0 && shut[0][node - height] === 0)
      this.#put(node - height, level + (crossed[0][node - height] ?? 0));
    if (column < width - 1 && shut[0][node] === 0) this.#put(node + height, level + (crossed[0][node] ?? 0));
    if (row > 0 && shut[1][node - 1] === 0) this.#put(node - 1, level + (crossed[1][node - 1] ?? 0));
    if (row < height - 1 && shut[1][node] === 0) this.#put(node + 1, level + (crossed[1][node] ?? 0));
  }

  #put(node: number, level: number): void {
    if ((this.#least[node] ?? 0) >= 0) return;
    while (this.#levels.length <= level) this.#levels.push([]);
    this.#levels[level]?.push(node);
  }
}
