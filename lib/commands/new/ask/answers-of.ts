import { remedyFor } from '../../../read/report.ts';
import type { Answers, Asker, Choice, Question } from './question.ts';

/** What came of asking: answers to all that was asked, and what is wrong with those that were given beforehand. */
export interface Answered {
  readonly answers: Answers;
  readonly faults: readonly string[];
}

/**
 * Goes through questions in their order. What was given beforehand, by flags or by an earlier try, is taken; all else is
 * asked, where somebody is there to answer; else it takes what Enter would, or is told as lacking. `seen` is told the
 * answers after each one, so that nothing is lost where the person breaks off.
 */
export async function answersOf(
  questions: readonly Question[],
  given: Answers,
  asker: Asker | null,
  seen: (answers: Answers) => Promise<void> = async () => {},
): Promise<Answered> {
  let answers: Answers = {};
  const faults: string[] = [];
  for (const question of questions) {
    if (question.when?.(answers) === false) continue;
    const before = given[question.key];
    const found = before ? givenAnswer(question, before, answers) : null;
    let lines: readonly string[];
    if (found !== null && typeof found !== 'string') lines = found;
    else if (asker) {
      if (found !== null) asker.say(found);
      lines = await asked(question, answers, asker);
    } else {
      const taken = untouched(question, answers);
      if (found !== null || taken === null) faults.push(found ?? lacking(question, answers));
      lines = taken ?? [];
    }
    answers = withLines(answers, question.key, lines);
    await seen(answers);
  }
  return { answers, faults };
}

/** What a question takes where nobody answers it; null where it can't do without an answer. */
function untouched({ many, fallback }: Question, answers: Answers): readonly string[] | null {
  const taken = many ? '' : (fallback?.(answers) ?? null);
  if (taken === null) return null;
  return taken === '' ? [] : [taken];
}

/** Answers that were given beforehand; a text tells what is wrong with them. */
function givenAnswer(
  question: Question,
  lines: readonly string[],
  answers: Answers,
): readonly string[] | string {
  const { key, many } = question;
  if (!many && lines.length > 1) return `--${key} may be given once`;
  for (const [at, line] of lines.entries()) {
    const fault = faultOf(question, line, withLines(answers, key, lines.slice(0, at)));
    if (fault !== null) return `--${key} "${line}": ${fault}`;
  }
  return lines.filter((line) => line.trim() !== '');
}

function lacking({ key, asks, hints }: Question, answers: Answers): string {
  const example = hints(answers).find((hint) => hint.startsWith('Such as: '));
  return `--${key} is needed: ${asks}${example ? `, ${example.replace('Such as: ', 'such as ')}` : ''}`;
}

/** Asks a question: one line, or line by line until an empty one. */
async function asked(question: Question, answers: Answers, asker: Asker): Promise<readonly string[]> {
  asker.say(['', question.asks, ...question.hints(answers).map((hint) => `  ${hint}`)].join('\n'));
  const choices = question.choices?.(answers) ?? null;
  if (!question.many) {
    const fallback = question.fallback?.(answers) ?? null;
    const line = await one(question, { answers, asker, choices, fallback, message: question.key });
    return line === '' ? [] : [line];
  }
  const lines: string[] = [];
  for (;;) {
    const so = withLines(answers, question.key, lines);
    const message = `${question.key} ${lines.length + 1}`;
    const line = await one(question, { answers: so, asker, choices, fallback: '', message });
    if (line === '') return lines;
    lines.push(line);
  }
}

interface Turn {
  readonly answers: Answers;
  readonly asker: Asker;
  readonly choices: readonly Choice[] | null;
  readonly fallback: string | null;
  readonly message: string;
}

async function one(question: Question, turn: Turn): Promise<string> {
  const { answers, asker, choices, fallback, message } = turn;
  const fault = (line: string) => faultOf(question, line, answers);
  return (await asker.ask({ message, choices, fallback, fault })).trim();
}

function faultOf(question: Question, line: string, answers: Answers): string | null {
  if (line.trim() === '')
    return question.many || question.fallback?.(answers) === '' ? null : 'needs an answer';
  const fault = question.fault(line.trim(), answers);
  if (fault !== null) return fault;
  const choices = question.choices?.(answers).map(({ value }) => value);
  return !choices || choices.includes(line.trim())
    ? null
    : `"${line.trim()}" is not one of them; ${remedyFor(
        line.trim(),
        choices.filter((word) => word !== ''),
      )}`;
}

function withLines(answers: Answers, key: string, lines: readonly string[]): Answers {
  return { ...answers, [key]: lines };
}
