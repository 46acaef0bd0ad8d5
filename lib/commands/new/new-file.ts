import { fileId } from '../../model/fields.ts';
import type { Problem } from '../../model/problem.ts';
import { problemText } from '../../model/problem.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus } from '../exit-status.ts';
import { answersOf, type Beforehand } from './ask/answers-of.ts';
import { type Answers, type Asker, Interrupted, lineOf, type Question } from './ask/question.ts';
import { namedKey, naming, withSeldomTogether } from './ask/seldom.ts';
import { type Draft, openDraft } from './draft.ts';
import { idOf } from './id-of.ts';
import { type AnswerKeeper, answerKeeper, earlierAnswers, mendingTold } from './kept-answers.ts';
import { markedText } from './marked.ts';
import { refused } from './refused.ts';

/** What is begun by questions: one file of the shop. */
export interface NewFile {
  readonly what: 'vehicle' | 'part' | 'job';
  /** What its answers are kept under, with its name. */
  readonly draft: string;
  readonly questions: readonly Question[];
  /** The questions that are asked, where all others are taken only where they are given; left out, all are. */
  readonly asked?: ReadonlySet<string>;
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
 * Asks for what a file needs, one thing after another, and writes it. Where nobody sits there, all comes from flags. What
 * the reader finds wrong with the file stands in it as comments, each at its place. Nothing that is there already is
 * written over, and no answer is lost: whoever breaks off, gave a wrong flag or has no room on the disk finds them again.
 */
export async function newFile(
  effects: Effects,
  file: NewFile,
  given: Given,
  asker: Asker | null,
): Promise<ExitStatus> {
  const early = given.id === null ? null : idFault(file, given.id);
  if (early !== null) return refused(effects, early);
  const draft = await draftOf(effects, file, given);
  const say = asker ? (text: string) => asker.say(text) : effects.tell;
  const before = earlierAnswers(say, { questions: questionsOf(file, null), draft, own: withName(given) });
  const keeper = answerKeeper(effects, `the ${file.what} is written`, draft);
  try {
    const whole = asker
      ? await askedAnswers(effects, file, before, { asker, keeper })
      : await flagAnswers(effects, file, before, keeper);
    if (whole === null) return exitStatus.inputErrors;
    return await written(effects, file, whole, keeper);
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    return refused(effects, `no ${file.what} is written${keeper.told()}`);
  }
}

/** Everything by flags: what is wrong or lacking is told in one go. */
async function flagAnswers(
  effects: Effects,
  file: NewFile,
  before: Beforehand,
  keeper: AnswerKeeper,
): Promise<Answers | null> {
  const { answers, faults, refused: wrong } = await answersOf(questionsOf(file, before), before, null);
  if (faults.length === 0) return answers;
  await keeper.keep({ answers, refused: wrong });
  refused(
    effects,
    ...faults,
    `rackleaf new ${file.what} --flags lists every flag, with how its answer is written`,
  );
  refused(effects, ...mendingTold(keeper));
  return null;
}

/** The draft of what is begun; of another thing that had no name either nothing is taken. */
async function draftOf(effects: Effects, file: NewFile, { id, answers }: Given): Promise<Draft> {
  const draft = await openDraft(effects, `${file.draft}-${id ?? 'unnamed'}`);
  const [own, before] = [answers, draft.before.answers].map((some) => lineOf(some, 'title'));
  const isOther = id === null && own !== '' && before !== '' && own !== before;
  return isOther ? { ...draft, before: { answers: {} } } : draft;
}

function withName({ id, answers }: Given): Answers {
  return id === null ? answers : { ...answers, id: [id] };
}

interface Asking {
  readonly asker: Asker;
  readonly keeper: AnswerKeeper;
}

/** What a person answers, until the file reads without a problem or is to be written as it is. */
async function askedAnswers(
  effects: Effects,
  file: NewFile,
  given: Beforehand,
  { asker, keeper }: Asking,
): Promise<Answers> {
  const questions = questionsOf(file, given);
  asker.say(
    'Enter takes what is offered. ? leaves open what is not known yet: the file marks it. Ctrl-C keeps the answers.',
  );
  let before = given;
  for (;;) {
    const { answers } = await answersOf(questions, before, asker, keeper.keep);
    const problems = problemsOf(file, answers);
    if (problems.length === 0) return answers;
    refused(effects, ...problems.map(problemText));
    const again = await askedAgain(questions, answers, asker);
    if (again === null) return answers;
    const { [again.key]: _, ...others } = answers;
    before = { answers: naming(again, others) };
  }
}

function problemsOf(file: NewFile, answers: Answers): readonly Problem[] {
  const id = lineOf(answers, 'id');
  return file.problems(file.path(id), file.text(id, answers), answers);
}

/** Writes the file, with what is wrong in it marked; where it can't be written, its answers are kept, or its text is told. */
async function written(
  effects: Effects,
  file: NewFile,
  answers: Answers,
  keeper: AnswerKeeper,
): Promise<ExitStatus> {
  const id = lineOf(answers, 'id');
  const path = file.path(id);
  const problems = problemsOf(file, answers);
  const own = problems.filter(({ where }) => where.file === path);
  const text = markedText(file.text(id, answers), own);
  try {
    await effects.write(path, text);
  } catch (error) {
    await keeper.keep({ answers });
    refused(
      effects,
      `${path} can't be written${keeper.told() === '' ? `; this is its text:\n${text}` : keeper.told()}`,
    );
    throw error;
  }
  await keeper.discard();
  effects.out(path);
  if (own.length > 0)
    effects.tell(
      `${path} is written, and ${placesLeft(own.length)} still to be written in it: comments tell what`,
    );
  for (const problem of problems.filter(({ where }) => where.file !== path))
    effects.tell(problemText(problem));
  for (const line of file.told(id, answers)) effects.tell(line);
  return problems.length > 0 ? exitStatus.inputErrors : exitStatus.done;
}

function placesLeft(count: number): string {
  return count === 1 ? 'one place is' : `${count} places are`;
}

/** The name is asked for behind the title, of which one can be made. What is not asked has its question where it is given. */
function questionsOf(file: NewFile, before: Beforehand | null): readonly Question[] {
  const { asked } = file;
  const own = file.questions.filter(
    ({ key }) => !before || !asked || asked.has(key) || before.answers[key] !== undefined,
  );
  const [title, ...others] = withSeldomTogether(own);
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

/** Which answer is given anew; null for none: the file is written with what is wrong marked. */
async function askedAgain(
  questions: readonly Question[],
  answers: Answers,
  asker: Asker,
): Promise<Question | null> {
  const keys = questions.filter(
    ({ key, seldom }) => (key in answers || seldom !== undefined) && key !== 'id' && key !== namedKey,
  );
  // The first is what Enter takes, among many choices too.
  const choices = [
    { value: '', says: 'none: it is written as it is, and comments mark what is missing' },
    ...keys.map(({ key, asks }) => ({ value: key, says: `${key}: ${asks}` })),
  ];
  const message = 'Which answer is given anew?';
  const again = await asker.ask({ message, choices, fallback: '', fault: () => null });
  return keys.find(({ key }) => key === again) ?? null;
}
