/*
 * Room for numbers, kept from one solve to the next: making arrays anew, or letting them grow, would cost more than the
 * rest of a small network's solution. A solve ends before another begins, and whoever asks for room fills it before
 * reading. Arrays may be longer than what was asked for.
 */

/** Room for real numbers. */
export class RealRoom {
  #held = new Float64Array(64);

  of(count: number): Float64Array {
    if (this.#held.length < count) this.#held = new Float64Array(2 * count);
    return this.#held;
  }

  zeros(count: number): Float64Array {
    return this.of(count).fill(0, 0, count);
  }
}

/** Room for whole numbers. */
export class WholeRoom {
  #held = new Int32Array(64);

  /** What was written stays, in a longer array where this one is too short. */
  of(count: number): Int32Array {
    if (this.#held.length >= count) return this.#held;
    const shorter = this.#held;
    this.#held = new Int32Array(2 * count);
    this.#held.set(shorter);
    return this.#held;
  }
}
