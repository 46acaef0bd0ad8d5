import type { Problem } from '../../../model/problem.ts';
import { type Answers, linesOf } from './question.ts';
import { hasUnknown } from './rows.ts';

/** A line that is being answered, and what was answered before it. */
export interface Answering {
  readonly key: string;
  readonly line: string;
  readonly answers: Answers;
}

/**
 * What the reader finds with a line of an answer that it did not find without; null where that is nothing. Of a line in
 * which something is not known yet the file itself tells, once it is written.
 */
export function readingFault(
  { key, line, answers }: Answering,
  problems: (answers: Answers) => readonly Problem[],
): string | null {
  if (hasUnknown(line)) return null;
  const found = (so: Answers) => problems(so).map(problemWords);
  const before = new Set(found(answers));
  const after = found({ ...answers, [key]: [...linesOf(answers, key), line] });
  return after.find((words) => !before.has(words)) ?? null;
}

function problemWords({ message, remedy }: Problem): string {
  return remedy === undefined ? message : `${message}; ${remedy}`;
}
