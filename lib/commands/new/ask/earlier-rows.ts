import { editDistance } from '../../../read/names/nearest-name.ts';
import type { Beforehand } from './answers-of.ts';
import { type Answers, type Question, rowsIn, withLines } from './question.ts';

/**
 * Answers of a command with those that an earlier try left. A line stands in the place of the earlier one, and a row of a
 * list in the place of the row that it mends; all other rows stay, those that were refused too: they are told again until
 * they are mended, or left out by an empty line.
 */
export function withEarlier(questions: readonly Question[], earlier: Beforehand, own: Answers): Beforehand {
  const { open, refused = {} } = earlier;
  const before = { ...earlier.answers };
  let answers: Answers = own;
  const keys = new Set([...Object.keys(before), ...Object.keys(refused)]);
  for (const key of keys) {
    const question = questions.find((one) => one.key === key);
    const left = { kept: before[key] ?? [], refused: refused[key] ?? [] };
    const given = own[key];
    if (given === undefined) answers = withLines(answers, key, [...left.kept, ...left.refused]);
    else if (question?.many) answers = withLines(answers, key, mended(question, left, given));
  }
  return {
    answers,
    earlier: new Set([...keys].filter((key) => own[key] === undefined)),
    ...(open !== undefined && !(open in own) && { open }),
  };
}

interface Left {
  readonly kept: readonly string[];
  readonly refused: readonly string[];
}

/** The rows of a list that are not given anew, and behind them those that are. */
function mended(question: Question, left: Left, given: readonly string[]): readonly string[] {
  const rowsOf = (line: string) => rowsIn(question, line);
  const kept = [...left.kept];
  const isThing = (row: string) => (other: string) => question.thing?.(row) === question.thing?.(other);
  const lines = given.filter((line) => line.trim() !== '');
  // A line for several in the place of another one for as many: nothing of what was refused is left.
  const isReplaced = (rows: readonly string[]) =>
    rows.length > 1 &&
    lines.map(rowsOf).some((own) => own.length === rows.length && own.some((row) => rows.some(isThing(row))));
  const refused = left.refused
    .map(rowsOf)
    .filter((rows) => !isReplaced(rows))
    .flat();
  // Whose place none is in by its name mends the refused row that is written most like it.
  const strange = lines.flatMap(rowsOf).filter((row) => {
    const taken =
      take(kept, (other) => other === row) || take(refused, isThing(row)) || take(kept, isThing(row));
    return !taken;
  });
  for (const row of strange) {
    const nearest = refused.toSorted((a, b) => editDistance(row, a) - editDistance(row, b))[0];
    if (nearest !== undefined && isNear(row, nearest)) take(refused, (other) => other === nearest);
  }
  const stays = lines.length === given.length ? refused : [];
  return [...kept, ...stays, ...lines];
}

/** Takes the first row of which something holds out of a list; false where there is none. */
function take(rows: string[], holds: (row: string) => boolean): boolean {
  const at = rows.findIndex(holds);
  if (at >= 0) rows.splice(at, 1);
  return at >= 0;
}

/** True where at most half of what is written differs. */
function isNear(a: string, b: string): boolean {
  return editDistance(a, b) * 2 <= Math.max(a.length, b.length);
}
