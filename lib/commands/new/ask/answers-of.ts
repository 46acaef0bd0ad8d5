import { asked } from './asked.ts';
import { type Answers, type Asker, type Question, withLines } from './question.ts';
import { isPassedOver } from './seldom.ts';
import { type Refusal, refusalsTold } from './waiting-rows.ts';
import { weighed } from './weigh.ts';

/** What came of asking: answers to all that was asked, and what is wrong with those that were given beforehand. */
export interface Answered {
  readonly answers: Answers;
  readonly faults: readonly string[];
  /** Lines given beforehand that do not hold, by the keys of their questions. */
  readonly refused: Answers;
}

/** What was answered beforehand: by flags, or by a try that was broken off, may be in the middle of a list. */
export interface Beforehand {
  readonly answers: Answers;
  /** The question whose list was not ended. */
  readonly open?: string;
  /** Lines that an earlier command gave, and that did not hold. */
  readonly refused?: Answers;
  /** Questions that this command gave no answer to: what they have is of an earlier one. */
  readonly earlier?: ReadonlySet<string>;
}

/** Is told all answers after each line, and the question whose list is not ended yet. */
export type Seen = (beforehand: Beforehand) => Promise<void>;

/**
 * Goes through questions in their order. What was given beforehand is taken; all else is asked, where somebody is there to
 * answer; else it takes what Enter would, or is told as lacking. `seen` is told the answers after each line, those given
 * beforehand that were not come to yet among them, so that nothing is lost where the person breaks off.
 */
export async function answersOf(
  questions: readonly Question[],
  given: Beforehand,
  asker: Asker | null,
  seen: Seen = async () => {},
): Promise<Answered> {
  let answers: Answers = {};
  const faults: Refusal[] = [];
  let refused: Answers = {};
  const so = (lines: Answers): Answers => ({ ...given.answers, ...lines });
  for (const question of questions) {
    const { key } = question;
    const needless = question.needless?.(answers) ?? null;
    if (needless !== null) {
      // What was given all the same is not dropped without a word.
      const dropped = (given.answers[key] ?? []).filter((line) => line.trim() !== '');
      if (dropped.length > 0) refused = withLines(refused, key, dropped);
      // Whoever left it out of this command was told so by the one before.
      if (given.earlier?.has(key)) continue;
      const told = dropped.map((line) => `--${key} "${line}": ${needless}`);
      for (const fault of told) asker?.say(fault);
      faults.push(...told.map((one) => ({ told: one })));
      continue;
    }
    if (asker && given.answers[key] === undefined && isPassedOver(question, answers)) continue;
    const found = givenAnswer(question, given.answers[key] ?? null, answers);
    let { lines } = found;
    if (found.refused.length > 0) refused = withLines(refused, key, found.refused);
    if (asker) {
      for (const { told } of found.faults) asker.say(told);
      const keep = (rows: readonly string[]) =>
        seen({ answers: so(withLines(answers, key, rows)), open: key });
      // What was given and does not hold is asked for anew: nothing follows in its place.
      const isOpen = lines === null && found.faults.length === 0;
      const follows = isOpen ? (question.follows?.(answers) ?? null) : null;
      if (follows !== null) {
        asker.say(`${key}: ${follows}`);
        lines = [follows];
      } else if (lines === null || given.open === key || found.faults.length > 0)
        lines = await asked(question, lines ?? [], { answers, asker, keep });
    } else {
      if (lines === null) lines = untouched(question, answers);
      faults.push(...found.faults);
      if (lines === null && found.faults.length === 0) faults.push({ told: lacking(question, answers) });
    }
    answers = withLines(answers, key, lines ?? []);
    await seen({ answers: so(answers) });
  }
  return { answers, faults: refusalsTold(faults), refused };
}

/** What a question takes where nobody answers it; null where it can't do without an answer. */
function untouched({ many, fallback }: Question, answers: Answers): readonly string[] | null {
  const taken = many ? '' : (fallback?.(answers) ?? null);
  if (taken === null) return null;
  return taken === '' ? [] : [taken];
}

interface Found {
  /** What of it can be taken; null where nothing can. */
  readonly lines: readonly string[] | null;
  readonly faults: readonly Refusal[];
  /** The lines that the faults are of. */
  readonly refused: readonly string[];
}

/** Answers that were given beforehand, and what is wrong with some of them. */
function givenAnswer(question: Question, given: readonly string[] | null, answers: Answers): Found {
  const { key, many } = question;
  if (given === null) return { lines: null, faults: [], refused: [] };
  if (!many && given.length > 1)
    return { lines: null, faults: [{ told: `--${key} may be given once` }], refused: given };
  const lines: string[] = [];
  const faults: Refusal[] = [];
  const refused: string[] = [];
  for (const line of given) {
    const read = weighed(question, line, withLines(answers, key, lines));
    if ('rows' in read) {
      lines.push(...read.rows);
      continue;
    }
    faults.push({ told: `--${key} "${line}": ${read.fault}`, of: { question, line } });
    refused.push(line);
  }
  return { lines: lines.length === 0 && faults.length > 0 ? null : lines, faults, refused };
}

function lacking({ key, asks, hints }: Question, answers: Answers): string {
  const example = hints(answers).find((hint) => hint.startsWith('Such as: '));
  return `--${key} is needed: ${asks}${example ? `, ${example.replace('Such as: ', 'such as ')}` : ''}`;
}
