import type { Mark, Trace, Traced, TraceInput } from '../model/trace.ts';

/** What a computation says of its result; `origin` is `computed` where nothing else is said. */
export interface Working {
  readonly unit: string;
  /** The rule's id, such as `channel-load`. */
  readonly rule: string;
  /** The formula in plain writing, with the names of the inputs. */
  readonly formula: string;
  readonly citation: string;
  readonly inputs: readonly TraceInput[];
  readonly mark?: Mark;
  readonly origin?: Trace['origin'];
}

/** A number together with the working by which a reader can redo it. */
export function traced(value: number, working: Working): Traced<number> {
  const { origin = 'computed', mark, inputs, ...rest } = working;
  return { value, trace: { origin, value, ...rest, ...(mark ? { mark } : {}), inputs: [...inputs] } };
}

/** One input of a formula: the name that the formula uses, its value and its SI unit. */
export function input(name: string, value: number | string, unit = ''): TraceInput {
  return { name, value, unit };
}

export { commonPractice } from '../model/trace.ts';
