import { CheapestFirst } from '../queue.ts';

/** What a search knows of its states, by number, and those that are still to be gone on from. */
export class DressStates {
  readonly queue = new CheapestFirst();
  /** What the cheapest way to a state costs; infinite where none is known. */
  cost = new Float64Array(0);
  /** The state that it comes from, of those that are reached; -1: the start. */
  before = new Int32Array(0);
  #reached = new Int32Array(1024);
  #count = 0;

  /** Forgets all, and makes room for so many states. */
  clear(states: number): void {
    this.queue.clear();
    if (this.cost.length < states) {
      this.cost = new Float64Array(2 * states).fill(Infinity);
      this.before = new Int32Array(2 * states);
    } else for (let at = 0; at < this.#count; at += 1) this.cost[this.#reached[at] ?? 0] = Infinity;
    this.#count = 0;
  }

  /** Notes a state that is reached for the first time. */
  note(state: number): void {
    if (this.#count === this.#reached.length) {
      const more = new Int32Array(2 * this.#count);
      more.set(this.#reached);
      this.#reached = more;
    }
    this.#reached[this.#count] = state;
    this.#count += 1;
  }
}
