import { idOf } from '../id-of.ts';
import { type Question, rowsIn } from './question.ts';

/** A fault of what was given beforehand, as it is told, and the line that it is of where it is of one. */
export interface Refusal {
  readonly told: string;
  readonly of?: { readonly question: Question; readonly line: string };
}

/**
 * What is told of refused lines. One that names what a line refused before it was to tell may be right by itself: it waits
 * for that one, and all that wait for the same are told together.
 */
export function refusalsTold(refusals: readonly Refusal[]): readonly string[] {
  const told: string[] = [];
  const waiting = new Map<string, string[]>();
  const named = new Map<string, string>();
  for (const { told: own, of } of refusals) {
    const cause = of && wordsIn(of.question, of.line).find((word) => named.has(word));
    const flag = of ? `--${of.question.key} "${of.line}"` : '';
    const first = cause === undefined ? undefined : named.get(cause);
    if (first === undefined) told.push(own);
    else waiting.set(first, [...(waiting.get(first) ?? []), flag]);
    for (const name of of ? thingsOf(of.question, of.line) : []) named.set(name, first ?? flag);
  }
  return [
    ...told,
    ...[...waiting].map(
      ([first, rows]) =>
        `kept until ${first} is mended, which they follow from, and read then: ${rows.join(', ')}`,
    ),
  ];
}

/** Ids of what a refused line was to tell. */
function thingsOf(question: Question, line: string): readonly string[] {
  return rowsIn(question, line).flatMap((row) => (question.thing && idOf(question.thing(row))) ?? []);
}

/** The names in a line, those of several rows each whole. */
function wordsIn(question: Question, line: string): readonly string[] {
  return rowsIn(question, line).flatMap((row) => row.split(/[^\p{L}\d-]+/u).filter((word) => word !== ''));
}
