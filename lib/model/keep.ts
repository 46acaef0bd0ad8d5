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

/** A step that waits for others, such as one that writes files. */
export interface LaterStep<I, O> {
  readonly id: string;
  readonly compute: (input: I) => Promise<O>;
}

/** As `Keep`, for a step that waits. */
export type KeepLater = <I, O>(step: LaterStep<I, O>, input: I) => Promise<O>;

/** Keeps nothing of a step that waits. */
export const computeLater: KeepLater = (step, input) => step.compute(input);

/** Keeps nothing: every step is computed anew. */
export const computeAnew: Keep = (step, input) => step.compute(input, computeAnew);
