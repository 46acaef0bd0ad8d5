import { type Answers, type Asker, type Choice, type Question, withLines } from './question.ts';
import { doubtIn, weighed } from './weigh.ts';

/** Where a question is asked. */
interface Asking {
  /** What was answered before it. */
  readonly answers: Answers;
  readonly asker: Asker;
  /** Is told the rows after each line of a list. */
  readonly keep: (rows: readonly string[]) => Promise<void>;
}

/** Asks a question: one line, or line by line until an empty one, behind the rows that it has already. */
export async function asked(
  question: Question,
  before: readonly string[],
  { answers, asker, keep }: Asking,
): Promise<readonly string[]> {
  asker.say(['', question.asks, ...question.hints(answers).map((hint) => `  ${hint}`)].join('\n'));
  const choices = question.choices?.(answers) ?? null;
  if (!question.many) {
    const fallback = question.fallback?.(answers) ?? null;
    const { rows } = await one(question, { answers, asker, choices, fallback, message: question.key });
    return rows;
  }
  const lines = [...before];
  for (const [at, line] of lines.entries()) asker.say(`  ${question.key} ${at + 1}: ${line}`);
  for (;;) {
    const so = withLines(answers, question.key, lines);
    const message = `${question.key} ${lines.length + 1}`;
    const { rows, isLast } = await one(question, { answers: so, asker, choices, fallback: '', message });
    if (rows.length === 0) return lines;
    // A line that stands for several is said back, so that nobody finds out later how it was read.
    if (rows.length > 1)
      for (const [at, row] of rows.entries()) asker.say(`  ${question.key} ${lines.length + at + 1}: ${row}`);
    lines.push(...rows);
    await keep(lines);
    if (isLast || (question.whole && lines.length >= question.whole(answers))) return lines;
  }
}

interface Turn {
  readonly answers: Answers;
  readonly asker: Asker;
  readonly choices: readonly Choice[] | null;
  readonly fallback: string | null;
  readonly message: string;
}

/** What one line told. */
interface Told {
  readonly rows: readonly string[];
  /** True where it said that nothing follows. */
  readonly isLast: boolean;
}

/** The rows of one line. What is doubtful is told once; the same line again is taken. */
async function one(question: Question, turn: Turn): Promise<Told> {
  const { answers, asker, choices, fallback, message } = turn;
  let doubted = '';
  const fault = (typed: string): string | null => {
    const { line } = ended(question, typed);
    const read = weighed(question, line, answers);
    if ('fault' in read) return read.fault;
    const doubt = line === doubted ? null : doubtIn(question, line, answers);
    if (doubt !== null) doubted = line;
    return doubt === null ? null : `${doubt}; Enter once more takes it as it is`;
  };
  const { line, isLast } = ended(question, await asker.ask({ message, choices, fallback, fault }));
  const read = weighed(question, line, answers);
  if ('fault' in read) throw new Error(`An answer that was found right is not: it ${read.fault}.`);
  return { rows: read.rows, isLast };
}

/** A line of a list without the word that ends the list behind it. */
function ended({ many }: Question, typed: string): { readonly line: string; readonly isLast: boolean } {
  const [, line] = (many && behindLast.exec(typed)) || [];
  return line === undefined ? { line: typed, isLast: false } : { line, isLast: true };
}

/** `cargo-stud, cargo, left, M8, end`; a sentence has its full stop before it. */
const behindLast = /^(.*?)(?:\s*,|(?<=\.))\s*end\s*$/i;
