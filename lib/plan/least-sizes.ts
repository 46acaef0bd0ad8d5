/** Why a conductor may not be thinner than it is. */
export interface LeastSize {
  readonly areaMm2: number;
  readonly why: string;
}

/**
 * The least size of each conductor, by link. It only grows: a size never shrinks between passes, which is
 * what ends the loop between size and length.
 */
export class LeastSizes {
  readonly #sizes = new Map<string, LeastSize>();

  of(link: string): LeastSize {
    return this.#sizes.get(link) ?? { areaMm2: 0, why: '' };
  }

  /** The same sizes, to try on what may be given up again. */
  copy(): LeastSizes {
    const copy = new LeastSizes();
    copy.adopt(this);
    return copy;
  }

  /** Takes over what another copy came to. */
  adopt(other: LeastSizes): void {
    for (const [link, { areaMm2, why }] of other.#sizes) this.raise(link, areaMm2, why);
  }

  /** Raises the least size of a conductor; a smaller one changes nothing. */
  raise(link: string, areaMm2: number, why: string): void {
    if (areaMm2 > this.of(link).areaMm2) this.#sizes.set(link, { areaMm2, why });
  }
}
