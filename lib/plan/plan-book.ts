import type { FindingId } from '../model/findings/index.ts';
import type { PlacedRemark, RemarkOf, Whereabouts } from '../model/remark.ts';
import type { Trace, Traced } from '../model/trace.ts';

/** What a book holds: traces by their id paths, and remarks, in the order in which they were written down. */
export interface PlanNotes {
  readonly traces: readonly (readonly [idPath: string, trace: Trace])[];
  readonly remarks: readonly PlacedRemark[];
}

/** What the stages of one plan write down beside their results: how each number came about, and what was noticed. */
export class PlanBook {
  readonly #traces = new Map<string, Trace>();
  readonly #remarks: PlacedRemark[] = [];

  /** Writes the trace of a number down under its id path, such as `power.fuses.main.ratingA`; gives the number. */
  trace<T>(idPath: string, traced: Traced<T>): T {
    this.#traces.set(idPath, traced.trace);
    return traced.value;
  }

  /** Writes a remark down with the place of its subject. */
  remark<Id extends FindingId>(remark: RemarkOf<Id>, where: Whereabouts): void {
    this.#remarks.push({ remark, ...where });
  }

  /** Takes over all that another book holds. */
  adopt({ traces, remarks }: PlanNotes): void {
    for (const [idPath, trace] of traces) this.#traces.set(idPath, trace);
    this.#remarks.push(...remarks);
  }

  /** All that is written down, as plain data. */
  notes(): PlanNotes {
    return { traces: [...this.#traces], remarks: [...this.#remarks] };
  }

  /** All traces, by id path in alphabetical order. */
  traces(): Record<string, Trace> {
    return Object.fromEntries([...this.#traces].sort(([a], [b]) => (a < b ? -1 : 1)));
  }

  remarks(): readonly PlacedRemark[] {
    return this.#remarks;
  }
}
