/** Why a conductor may not be thinner than it is. */
export interface LeastSize {
  readonly areaMm2: number;
  readonly why: string;
}

/** Least sizes as plain data: by link, and by fuse the least current (A). */
export interface LeastSizesHeld {
  readonly sizes: ReadonlyMap<string, LeastSize>;
  readonly flowsA: ReadonlyMap<string, number>;
}

/**
 * The least size of each conductor, by link, and the least current that each fuse is chosen for. They only grow: a size
 * never shrinks between passes, which is what ends the loop between size and length.
 */
export class LeastSizes {
  readonly #sizes = new Map<string, LeastSize>();
  readonly #flowsA = new Map<string, number>();

  of(link: string): LeastSize {
    return this.#sizes.get(link) ?? { areaMm2: 0, why: '' };
  }

  /** The same sizes, to try on what may be given up again. */
  copy(): LeastSizes {
    const copy = new LeastSizes();
    copy.adopt(this.held());
    return copy;
  }

  /** Takes over what others came to. */
  adopt({ sizes, flowsA }: LeastSizesHeld): void {
    for (const [link, { areaMm2, why }] of sizes) this.raise(link, areaMm2, why);
    for (const [fuse, currentA] of flowsA) this.raiseFlow(fuse, currentA);
  }

  held(): LeastSizesHeld {
    return { sizes: new Map(this.#sizes), flowsA: new Map(this.#flowsA) };
  }

  /** The current that a fuse carries at the voltages that its devices really get (A); 0 while none was solved. */
  flowA(fuse: string): number {
    return this.#flowsA.get(fuse) ?? 0;
  }

  raiseFlow(fuse: string, currentA: number): void {
    if (currentA > this.flowA(fuse)) this.#flowsA.set(fuse, currentA);
  }

  /** Raises the least size of a conductor; a smaller one changes nothing. */
  raise(link: string, areaMm2: number, why: string): void {
    if (areaMm2 > this.of(link).areaMm2) this.#sizes.set(link, { areaMm2, why });
  }
}
