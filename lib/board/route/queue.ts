/** A queue that gives out the cheapest entry first; of equal ones the smaller number. A binary heap. */
export class CheapestFirst {
  #entries = new Int32Array(1024);
  #costs = new Float64Array(1024);
  #size = 0;

  get size(): number {
    return this.#size;
  }

  /** Takes everything out; the memory is kept for the next search. */
  clear(): void {
    this.#size = 0;
  }

  push(entry: number, cost: number): void {
    if (this.#size === this.#entries.length) this.#grow();
    const [entries, costs] = [this.#entries, this.#costs];
    // Parents that come later move down until the new entry's place is found.
    let at = this.#size;
    this.#size += 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      const parentCost = costs[parent] ?? 0;
      const parentEntry = entries[parent] ?? 0;
      if (parentCost < cost || (parentCost === cost && parentEntry < entry)) break;
      entries[at] = parentEntry;
      costs[at] = parentCost;
      at = parent;
    }
    entries[at] = entry;
    costs[at] = cost;
  }

  /** The cheapest entry, or undefined where none is left. */
  pop(): number | undefined {
    if (this.#size === 0) return undefined;
    const first = this.#entries[0];
    this.#size -= 1;
    if (this.#size > 0) this.#sink(this.#entries[this.#size] ?? 0, this.#costs[this.#size] ?? 0);
    return first;
  }

  #grow(): void {
    const entries = new Int32Array(2 * this.#entries.length);
    const costs = new Float64Array(2 * this.#costs.length);
    entries.set(this.#entries);
    costs.set(this.#costs);
    [this.#entries, this.#costs] = [entries, costs];
  }

  /** Puts an entry in the place of the first; children that come before it move up. */
  #sink(entry: number, cost: number): void {
    const [entries, costs, size] = [this.#entries, this.#costs, this.#size];
    let at = 0;
    for (let child = 1; child < size; child = 2 * at + 1) {
      const other = child + 1;
      const before =
        other < size &&
        ((costs[other] ?? 0) < (costs[child] ?? 0) ||
          (costs[other] === costs[child] && (entries[other] ?? 0) < (entries[child] ?? 0)));
      const least = before ? other : child;
      const leastCost = costs[least] ?? 0;
      const leastEntry = entries[least] ?? 0;
      if (cost < leastCost || (cost === leastCost && entry < leastEntry)) break;
      entries[at] = leastEntry;
      costs[at] = leastCost;
      at = least;
    }
    entries[at] = entry;
    costs[at] = cost;
  }
}
