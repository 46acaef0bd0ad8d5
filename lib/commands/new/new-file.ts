import { fileId } from '../../model/fields.ts';
import type { Problem } from '../../model/problem.ts';
import { problemText } from '../../model/problem.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus } from '../exit-status.ts';
import { answersOf } from './ask/answers-of.ts';
import { type Answers, type Asker, Interrupted, lineOf, type Question } from './ask/question.ts';
import { type Draft, openDraft } from './draft.ts';
import { idOf } from './id-of.ts';
import { refused } from './refused.ts';

/** What is begun by questions: one file of the shop. */
export interface NewFile {
  readonly what: 'vehicle' | 'part' | 'job';
  readonly questions: readonly Question[];
  /** Why a name can't be given to it; null where it can. */
  readonly taken: (id: string) => string | null;
  readonly path: (id: string) => string;
  readonly text: (id: string, answers: Answers) => string;
  /** What the reader finds in the file as it would be written of these answers. */
  readonly problems: (path: string, text: string, answers: Answers) => readonly Problem[];
  /** What is told once it is written: what is still to be measured, what comes next. */
  readonly told: (id: string, answers: Answers) => readonly string[];
}

/** What the command line gave. */
export interface Given {
  readonly id: string | null;
  readonly answers: Answers;
}

/**
 * Asks for what a file needs, one thing after another, and writes it once it reads without a problem. Where nobody
 * sits there, all comes from flags. Nothing that is there already is written over; a person who breaks off finds the
 * answers again.
 */
export async function newFile(
  effects: Effects,
  file: NewFile,
  given: Given,
  asker: Asker | null,
): Promise<ExitStatus> {
  const early = given.id === null ? null : idFault(file, given.id);
  if (early !== null) return refused(effects, early);
  const draft = await openDraft(effects, `${file.what}-${given.id ?? 'unnamed'}`);
  try {
    const whole = asker
      ? await askedAnswers(effects, file, given, { asker, draft })
      : await flagAnswers(effects, file, given);
    if (whole === null) return exitStatus.inputErrors;
    const id = lineOf(whole, 'id');
    await effects.write(file.path(id), file.text(id, whole));
    if (asker) await draft.discard();
    effects.out(file.path(id));
    for (const line of file.told(id, whole)) effects.tell(line);
    return exitStatus.done;
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    return refused(
      effects,
      `no ${file.what} is written; ${draft.path} keeps the answers, and the same command goes on`,
    );
  }
}

/** Everything by flags: what is wrong or lacking is told in one go. */
async function flagAnswers(effects: Effects, file: NewFile, given: Given): Promise<Answers | null> {
  const { answers, faults } = await answersOf(questionsOf(file), withName(given), null);
  if (faults.length > 0) {
    refused(effects, ...faults);
    return null;
  }
  return tellProblems(effects, file, answers) ? null : answers;
}

function withName({ id, answers }: Given): Answers {
  return id === null ? answers : { ...answers, id: [id] };
}

interface Asking {
  readonly asker: Asker;
  readonly draft: Draft;
}

/** What a person answers, until the file reads without a problem; null where the person leaves off. */
async function askedAnswers(
  effects: Effects,
  file: NewFile,
  given: Given,
  { asker, draft }: Asking,
): Promise<Answers | null> {
  const questions = questionsOf(file);
  const count = Object.keys(draft.answers).length;
  if (count > 0)
    asker.say(`${count} answers of an earlier try are taken; without ${draft.path} all is asked anew`);
  let before: Answers = { ...draft.answers, ...withName(given) };
  for (;;) {
    const { answers } = await answersOf(questions, before, asker, draft.save);
    if (!tellProblems(effects, file, answers)) return answers;
    const again = await askedAgain(questions, answers, asker);
    if (again === '') throw new Interrupted();
    const { [again]: _, ...others } = answers;
    before = others;
  }
}

/** True where the file that the answers make would have problems: they are told. */
function tellProblems(effects: Effects, file: NewFile, answers: Answers): boolean {
  const id = lineOf(answers, 'id');
  const problems = file.problems(file.path(id), file.text(id, answers), answers);
  refused(effects, ...problems.map(problemText));
  return problems.length > 0;
}

/** The name is asked for behind the title, of which one can be made. */
function questionsOf(file: NewFile): readonly Question[] {
  const [title, ...others] = file.questions;
  if (!title) return [];
  return [title, idQuestion(file), ...others];
}

function idQuestion(file: NewFile): Question {
  return {
    key: 'id',
    asks: `What the ${file.what} is called in files and addresses`,
    hints: () => ['Lower case letters and digits with single hyphens.'],
    many: false,
    fallback: (answers) => freeName(file, lineOf(answers, 'title')),
    fault: (answer) => idFault(file, answer),
  };
}

/** A name made of the title; null where that makes none, or one that is taken. */
function freeName(file: NewFile, title: string): string | null {
  const made = idOf(title);
  return made !== null && file.taken(made) === null ? made : null;
}

function idFault(file: NewFile, id: string): string | null {
  const named = fileId.safeParse(id);
  if (!named.success) return `"${id}" ${named.error.issues[0]?.message ?? 'is not an id'}`;
  return file.taken(id);
}

/** Which answer is given anew; empty for none. */
function askedAgain(questions: readonly Question[], answers: Answers, asker: Asker): Promise<string> {
  const keys = questions.filter(({ key }) => key in answers && key !== 'id');
  const choices = [
    ...keys.map(({ key, asks }) => ({ value: key, says: `${key}: ${asks}` })),
    { value: '', says: 'none: leave off' },
  ];
  return asker.ask({ message: 'Which answer is given anew?', choices, fallback: null, fault: () => null });
}
