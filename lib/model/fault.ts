/**
 * What can't be computed from what was given, and why: a named value in place of the result, never an exception.
 * `fault` is what a rule or a test asks for, `message` and `remedy` are for the reader.
 */
export interface Fault<Name extends string = string> {
  readonly fault: Name;
  /** Ids of what it is about, the subject first; the names of figures where nothing has an id. */
  readonly of: readonly string[];
  /** What is wrong, in the words of the trade, built from ids and measures only. */
  readonly message: string;
  readonly remedy: string;
}

/** Builds a fault. */
export function faultOf<Name extends string>(
  fault: Name,
  of: readonly string[],
  message: string,
  remedy: string,
): Fault<Name> {
  return { fault, of, message, remedy };
}

/** True for a fault, so that what is left is the result. */
export function isFault(result: unknown): result is Fault {
  return typeof result === 'object' && result !== null && 'fault' in result;
}

/** True for a number that a measure of more than nothing can have. */
export function isPositive(value: number): boolean {
  return Number.isFinite(value) && value > 0;
}

/** A figure that nothing can be computed from. */
export type FigureFault = Fault<'not-above-zero' | 'below-zero'>;

/** The first of the named numbers that is not a number above zero, as a fault; null where all are. */
export function positiveFault(numbers: Readonly<Record<string, number>>): FigureFault | null {
  const bad = Object.entries(numbers).find(([, value]) => !isPositive(value));
  return bad ? figureFault('not-above-zero', bad, 'must be above zero') : null;
}

/** The first of the named numbers that is negative or no number, as a fault; null where all are sound. */
export function negativeFault(numbers: Readonly<Record<string, number>>): FigureFault | null {
  const bad = Object.entries(numbers).find(([, value]) => !Number.isFinite(value) || value < 0);
  return bad ? figureFault('below-zero', bad, 'must be zero or more') : null;
}

function figureFault(
  name: FigureFault['fault'],
  [figure, value]: readonly [string, number],
  must: string,
): FigureFault {
  return faultOf(
    name,
    [figure],
    `${figure} is ${value}, but ${must}`,
    `correct ${figure} where it was written`,
  );
}
