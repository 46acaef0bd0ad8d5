/*
 * Room for numbers, kept from one solve to the next: making arrays anew, or letting them grow, would cost more than the
 * rest of a small network's solution. A solve ends before another begins, and whoever asks for room fills it before
 * reading. Arrays may be longer than what was asked for. They are plain ones: typed arrays are read more slowly from the
 * moment on when any library in the process has let go of a buffer.
 */

/** Room for real numbers. */
export class RealRoom {
  // A fraction at the start makes the engine hold real numbers; whole ones would be held otherwise until the first.
  #held = sameNumbers(64, 0.5);

  of(count: number): number[] {
    if (this.#held.length < count) this.#held = sameNumbers(2 * count, 0.5);
    return this.#held;
  }

  zeros(count: number): number[] {
    return this.of(count).fill(0, 0, count);
  }
}

/** Room for whole numbers. */
export class WholeRoom {
  #held = sameNumbers(64, 0);

  /** What was written stays, in a longer array where this one is too short. */
  of(count: number): number[] {
    const { length } = this.#held;
    if (length < count) this.#held = this.#held.concat(sameNumbers(2 * count - length, 0));
    return this.#held;
  }
}

/** Grown number by number, since an array that was made long at once is taken for one with holes, and read more slowly. */
function sameNumbers(count: number, value: number): number[] {
  const numbers: number[] = [];
  while (numbers.length < count) numbers.push(value);
  return numbers;
}
