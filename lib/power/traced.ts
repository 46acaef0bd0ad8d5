import type { Trace, Traced, TraceInput } from '../model/trace.ts';

/** What can't be computed from what was given, and why. A value, not an exception. */
export interface PowerFault {
  readonly fault: string;
}

/** True where a computation gave a fault in place of its result. */
export function isPowerFault<T extends object>(result: T | PowerFault): result is PowerFault {
  return 'fault' in result;
}

/** The working of a computed number, short of the number itself. */
export type Working = Omit<Trace, 'origin' | 'value' | 'unit' | 'inputs'> & {
  readonly origin?: Trace['origin'];
  /** Name, value and unit of each input. */
  readonly inputs?: readonly (readonly [name: string, value: number | string, unit: string])[];
};

/** Joins a number and its working; `computed` unless the working says otherwise. */
export function traced(value: number, unit: string, working: Working): Traced<number> {
  const inputs: TraceInput[] = (working.inputs ?? []).map(([name, input, inputUnit]) => ({
    name,
    value: input,
    unit: inputUnit,
  }));
  return { value, trace: { ...working, origin: working.origin ?? 'computed', value, unit, inputs } };
}

export { commonPractice } from '../model/trace.ts';

/** The first of the named numbers that is not a number above zero, as a fault; null where all are. */
export function positiveFault(numbers: Readonly<Record<string, number>>): PowerFault | null {
  for (const [name, value] of Object.entries(numbers))
    if (!Number.isFinite(value) || value <= 0)
      return { fault: `${name} is ${value}, but must be above zero` };
  return null;
}

/** The first of the named numbers that is negative or no number, as a fault; null where all are sound. */
export function negativeFault(numbers: Readonly<Record<string, number>>): PowerFault | null {
  for (const [name, value] of Object.entries(numbers))
    if (!Number.isFinite(value) || value < 0)
      return { fault: `${name} is ${value}, but must be zero or more` };
  return null;
}
