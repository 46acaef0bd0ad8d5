/** A queue that gives out the cheapest entry first; of equal ones the smaller number. A heap of four children each. */
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
    const entries = this.#entries;
    const costs = this.#costs;
    // Parents that come later move down until the new entry's place is found.
    let at = this.#size;
    this.#size += 1;
    while (at > 0) {
      const parent = (at - 1) >> 2;
      const parentCost = costs[parent] ?? 0;
      if (parentCost < cost || (parentCost === cost && (entries[parent] ?? 0) < entry)) break;
      entries[at] = entries[parent] ?? 0;
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
    if (this.#size > 0) this.#sink();
    return first;
  }

  #grow(): void {
    const entries = new Int32Array(2 * this.#entries.length);
    const costs = new Float64Array(2 * this.#costs.length);
    entries.set(this.#entries);
    costs.set(this.#costs);
    [this.#entries, this.#costs] = [entries, costs];
  }

  /** Puts the last entry in the place of the first; children that come before it move up. */
  #sink(): void {
    const entries = this.#entries;
    const costs = this.#costs;
    const size = this.#size;
    const entry = entries[size] ?? 0;
    const cost = costs[size] ?? 0;
    let at = 0;
    for (let child = 1; child < size; child = 4 * at + 1) {
      let least = child;
      let leastCost = costs[child] ?? 0;
      const end = Math.min(child + 4, size);
      for (let other = child + 1; other < end; other += 1) {
        const otherCost = costs[other] ?? 0;
        if (otherCost > leastCost) continue;
        if (otherCost === leastCost && (entries[other] ?? 0) > (entries[least] ?? 0)) continue;
        least = other;
        leastCost = otherCost;
      }
      if (cost < leastCost || (cost === leastCost && entry < (entries[least] ?? 0))) break;
      entries[at] = entries[least] ?? 0;
      costs[at] = leastCost;
      at = least;
    }
    entries[at] = entry;
    costs[at] = cost;
  }
}
