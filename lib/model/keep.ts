/**
 * A computation whose result may be kept. It reads its input and nothing else, and its result is plain data: numbers,
 * texts, lists, objects, maps and sets.
 */
export interface Step<I, O> {
  /** Its name: no two steps share one. */
  readonly id: string;
  /** `keep` is for the steps inside it; what it answers does not depend on it. */
  readonly compute: (input: I, keep: Keep) => O;
}

/** Gives the result of a step: the one that was kept, or a new one. They are the same, value for value. */
export type Keep = <I, O>(step: Step<I, O>, input: I) => O;

/** Keeps nothing: every step is computed anew. */
export const computeAnew: Keep = (step, input) => step.compute(input, computeAnew);
