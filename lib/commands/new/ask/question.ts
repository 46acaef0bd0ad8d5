/** What was answered, by the key of its question: one line, or one for each thing. A question left out has none. */
export type Answers = Readonly<Record<string, readonly string[]>>;

/** One of those that a question offers. */
export interface Choice {
  readonly value: string;
  readonly says: string;
}

/** One question. Its answer is a line of text, or several where it asks for many things, one a line. */
export interface Question {
  /** Its name among the answers, and the flag that gives it. */
  readonly key: string;
  readonly asks: string;
  /** Said before it is asked: how an answer is written, what there is to choose from. */
  readonly hints: (answers: Answers) => readonly string[];
  readonly many: boolean;
  /** Why it is not asked, by what was answered before it: `belongs to ...`; null where it is. Left out, it always is. */
  readonly needless?: (answers: Answers) => string | null;
  /** Left out, the answer is typed. */
  readonly choices?: (answers: Answers) => readonly Choice[];
  /** What Enter takes, an empty text where it may be left out; null, or no function, where something must be said. */
  readonly fallback?: (answers: Answers) => string | null;
  /** The answer that follows, and is not asked for: it is told. Null where nothing does. */
  readonly follows?: (answers: Answers) => string | null;
  /** What is wrong with an answer, in words; null where nothing is. */
  readonly fault: (answer: string, answers: Answers) => string | null;
  /** What is doubtful about an answer that can be written all the same, such as a part that is not there yet. */
  readonly doubt?: (answer: string, answers: Answers) => string | null;
  /** The rows that one line tells, as a text what is wrong with it. Left out, each line is one. */
  readonly rows?: (line: string) => readonly string[] | string;
  /** What a row of a list is of, its name or its two ends: of two rows of one thing the later one stands. */
  readonly thing?: (row: string) => string;
  /** A refused line as it was meant; null where nothing that is right can be made of it. */
  readonly meant?: (line: string, isRight: (line: string) => boolean) => string | null;
  /** How many rows make a list whole; left out, an empty line ends it. */
  readonly whole?: (answers: Answers) => number;
  /** Of what seldom is there to tell: what holds without it. It is asked where the answer `named` names it. */
  readonly seldom?: string;
  /** True for what may stay open until it is known. */
  readonly mayBeUnknown?: boolean;
}

/** What is asked of a person in one go. */
export interface Asked {
  readonly message: string;
  readonly choices: readonly Choice[] | null;
  /** What Enter takes; null where something must be typed. */
  readonly fallback: string | null;
  /** What is wrong with an answer. The asker tells it and asks again. */
  readonly fault: (answer: string) => string | null;
}

/** Who answers: a person at a terminal, or a test. */
export interface Asker {
  say(text: string): void;
  /** An answer in which nothing is wrong. Throws `Interrupted` where the person breaks off. */
  ask(asked: Asked): Promise<string>;
}

/** Thrown by an asker where the person breaks off. */
export class Interrupted extends Error {
  constructor() {
    super('Broken off.');
    this.name = 'Interrupted';
  }
}

/** The rows that a line of a list tells; where it can't be read so, the line as one. */
export function rowsIn({ rows }: Pick<Question, 'rows'>, line: string): readonly string[] {
  const read = rows?.(line) ?? [line];
  return typeof read === 'string' ? [line] : read;
}

/** The one line of an answer; empty where there is none. */
export function lineOf(answers: Answers, key: string): string {
  return answers[key]?.[0] ?? '';
}

/** All lines of an answer. */
export function linesOf(answers: Answers, key: string): readonly string[] {
  return answers[key] ?? [];
}

/** Answers with those to one more question. */
export function withLines(answers: Answers, key: string, lines: readonly string[]): Answers {
  return { ...answers, [key]: lines };
}
