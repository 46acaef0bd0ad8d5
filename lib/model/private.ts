/**
 * A value that must not leak: customer name, contact, plate, VIN, key location, price. It can't be put
 * into a string or into JSON: each way of doing so throws. A page that may show it says so with `reveal`.
 */
export class Private {
  readonly #value: string;
  constructor(value: string) {
    this.#value = value;
  }
  /** The value itself. Call it only where a page for the right audience is written. */
  reveal(): string {
    return this.#value;
  }
  [Symbol.toPrimitive](): never {
    throw new Error('A private value was put into a string. Use reveal() on a page that may show it.');
  }
  toString(): string {
    return this[Symbol.toPrimitive]();
  }
  toJSON(): never {
    throw new Error(
      'A private value was put into JSON. Leave it out of the plan, the index and the exports.',
    );
  }
}
