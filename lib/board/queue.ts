/** A queue that gives out the cheapest entry first; of equal ones the smaller number. A binary heap. */
export class CheapestFirst {
  readonly #entries: number[] = [];
  readonly #costs: number[] = [];

  get size(): number {
    return this.#entries.length;
  }

  push(entry: number, cost: number): void {
    let at = this.#entries.length;
    this.#entries.push(entry);
    this.#costs.push(cost);
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (!this.#before(at, parent)) return;
      this.#exchange(at, parent);
      at = parent;
    }
  }

  /** The cheapest entry, or undefined where none is left. */
  pop(): number | undefined {
    const first = this.#entries[0];
    const [last, cost] = [this.#entries.pop(), this.#costs.pop()];
    if (this.#entries.length === 0 || last === undefined || cost === undefined) return first;
    this.#entries[0] = last;
    this.#costs[0] = cost;
    this.#sink();
    return first;
  }

  #sink(): void {
    for (let at = 0; ; ) {
      let least = at;
      for (const child of [2 * at + 1, 2 * at + 2])
        if (child < this.#entries.length && this.#before(child, least)) least = child;
      if (least === at) return;
      this.#exchange(at, least);
      at = least;
    }
  }

  #before(a: number, b: number): boolean {
    const [one, other] = [this.#costs[a] ?? 0, this.#costs[b] ?? 0];
    return one < other || (one === other && (this.#entries[a] ?? 0) < (this.#entries[b] ?? 0));
  }

  #exchange(a: number, b: number): void {
    for (const list of [this.#entries, this.#costs]) {
      const held = list[a] ?? 0;
      list[a] = list[b] ?? 0;
      list[b] = held;
    }
  }
}
