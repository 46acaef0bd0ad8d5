/**
 * What can't be computed, and why: a named value, never an exception. `fault` is what a rule or a test
 * asks for, `subjects` the ids it is about, the other two are for the reader.
 */
export interface AudioFault<Name extends string = string> {
  readonly fault: Name;
  readonly subjects: readonly string[];
  /** What is wrong, in the words of the trade, built from ids and measures only. */
  readonly message: string;
  readonly remedy: string;
}

/** Builds a fault. */
export function audioFault<Name extends string>(
  fault: Name,
  subjects: readonly string[],
  message: string,
  remedy: string,
): AudioFault<Name> {
  return { fault, subjects, message, remedy };
}

/** True for a fault, so that what is left is the result. */
export function isFault(result: unknown): result is AudioFault {
  return typeof result === 'object' && result !== null && 'fault' in result;
}

/** True for a number that a measure of more than nothing can have. */
export function isPositive(value: number): boolean {
  return Number.isFinite(value) && value > 0;
}
