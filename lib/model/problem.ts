import type { FileEdit } from './finding.ts';
import { type Place, placeText } from './place.ts';

/**
 * An input error: what could not be read, and what to do about it. A value, not an exception: readers
 * collect all of them. (A *finding* is different: there the input could be read, but is wrong or doubtful.)
 */
export interface Problem {
  readonly where: Place;
  /** What is wrong, in the words of the trade. */
  readonly message: string;
  /** What was expected, with an example where that helps. */
  readonly expected?: string;
  /** What to do. */
  readonly remedy?: string;
  /** The same as a change of the file, where nothing else can be meant. */
  readonly edit?: FileEdit;
}

/** Why a written text can't be read, as a part of a sentence: a problem tells it with its place. */
export interface Unreadable {
  readonly unreadable: string;
  /** True where the sentence tells what to write already. */
  readonly isMended?: boolean;
  /** What was meant, where it can be nothing else. */
  readonly meant?: string;
}

/** A result that may carry problems beside what could be read. */
export interface Read<T> {
  readonly value: T;
  readonly problems: readonly Problem[];
}

/** The text of a problem as the command line prints it. */
export function problemText(problem: Problem): string {
  const parts = [`${placeText(problem.where)}: error: ${problem.message}`];
  if (problem.expected) parts.push(`  expected: ${problem.expected}`);
  if (problem.remedy) parts.push(`  to do: ${problem.remedy}`);
  return parts.join('\n');
}
