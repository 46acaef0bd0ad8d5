import { remedyFor } from '../../../read/report.ts';
import { type Answers, type Question, withLines } from './question.ts';
import { unknown } from './rows.ts';

/** The rows that a typed line gives, or what is wrong with it. */
export type Weighed = { readonly rows: readonly string[] } | { readonly fault: string };

/**
 * What a line gives as an answer to a question, beside what was answered before it. An empty one gives nothing where that
 * may be, and so does a `?` where a thing may stay open. A refused one is told as it was meant, where that can be seen.
 */
export function weighed(question: Question, line: string, answers: Answers): Weighed {
  const read = asWritten(question, line, answers);
  if ('rows' in read) return read;
  const isRight = (other: string) => 'rows' in asWritten(question, other, answers);
  const meant = question.meant?.(line.trim(), isRight) ?? null;
  return meant === null ? read : { fault: `${read.fault}; written right: "${meant}"` };
}

function asWritten(question: Question, line: string, answers: Answers): Weighed {
  const typed = line.trim();
  if (typed === '' || (typed === unknown && question.mayBeUnknown === true)) {
    const mayBeLeft = typed === unknown || question.many || question.fallback?.(answers) === '';
    return mayBeLeft ? { rows: [] } : { fault: needed(question) };
  }
  const rows = question.rows?.(typed) ?? [typed];
  if (typeof rows === 'string') return { fault: rows };
  const before = answers[question.key] ?? [];
  for (const [at, row] of rows.entries()) {
    const so = withLines(answers, question.key, [...before, ...rows.slice(0, at)]);
    const fault = question.fault(row, so) ?? notOffered(question, row, answers);
    if (fault !== null) return { fault: rows.length === 1 ? fault : `"${row}" ${fault}` };
  }
  return { rows };
}

/** What is doubtful about a line in which nothing is wrong; null where nothing is. */
export function doubtIn(question: Question, line: string, answers: Answers): string | null {
  const read = weighed(question, line, answers);
  if ('fault' in read) return null;
  const doubts = read.rows.map((row) => question.doubt?.(row, answers) ?? null);
  return doubts.find((doubt) => doubt !== null) ?? null;
}

function needed({ mayBeUnknown }: Question): string {
  return mayBeUnknown === true ? `needs an answer; ${unknown} leaves it open` : 'needs an answer';
}

function notOffered(question: Question, line: string, answers: Answers): string | null {
  const choices = question.choices?.(answers).map(({ value }) => value);
  if (!choices || choices.includes(line)) return null;
  const words = choices.filter((word) => word !== '');
  return `"${line}" is not one of them; ${remedyFor(line, words)}`;
}
