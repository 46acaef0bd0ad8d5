/** A queue that gives out the cheapest entry first; of equal ones the smaller number. A binary heap. */
export class CheapestFirst {
  readonly #entries: number[] = [];
  readonly #costs: number[] = [];

  get size(): number {
    return this.#entries.length;
  }

  push(entry: number, cost: number): void {
    const [entries, costs] = [this.#entries, this.#costs];
    // Parents that come later move down until the new entry's place is found.
    let at = entries.length;
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
    const first = this.#entries[0];
    const [last, cost] = [this.#entries.pop(), this.#costs.pop()];
    if (this.#entries.length > 0 && last !== undefined && cost !== undefined) this.#sink(last, cost);
    return first;
  }

  /** Puts an entry in the place of the first; children that come before it move up. */
  #sink(entry: number, cost: number): void {
    const [entries, costs] = [this.#entries, this.#costs];
    const size = entries.length;
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
