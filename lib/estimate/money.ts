import type { Trace, Traced } from '../model/trace.ts';

/** The traces of an estimate, by what they are of. */
export class TraceBook {
  readonly #traces = new Map<string, Trace>();

  add(id: string, { trace }: Traced<unknown>): void {
    this.#traces.set(id, trace);
  }

  get traces(): Record<string, Trace> {
    return Object.fromEntries(this.#traces);
  }
}

/** The currency that is reckoned in, and where it is noted how a figure came about. */
export interface Money {
  /** ISO 4217; null where the shop states none. */
  readonly currency: string | null;
  readonly decimals: number;
  readonly book: TraceBook;
}
