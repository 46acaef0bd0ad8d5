import type { Effects } from '../effects.ts';
import { answersOf } from './ask/answers-of.ts';
import { type Answers, type Asker, Interrupted, type Question } from './ask/question.ts';
import { type Draft, openDraft } from './draft.ts';
import { answerKeeper, earlierAnswers, mendingTold } from './kept-answers.ts';
import { refused } from './refused.ts';

/** What a draft of answers is called, until when it is kept, and what is said where they are broken off. */
export interface AskedFor {
  readonly draft: string;
  readonly until: string;
  readonly brokenOff: string;
  /** A question of which all is told anew: a list in a file. */
  readonly anew?: string | null;
}

/**
 * Answers to all of some questions, by flags, or asked where somebody sits there and kept as they come; null where they
 * are wrong or broken off, which is told. The draft stays until it is discarded.
 */
export async function keptAsking(
  effects: Effects,
  questions: readonly Question[],
  given: Answers,
  asker: Asker | null,
  { draft: name, until, brokenOff, anew = null }: AskedFor,
): Promise<Answers | null> {
  const draft = without(await openDraft(effects, name), anew);
  const keeper = answerKeeper(effects, until, draft);
  const say = asker ? (text: string) => asker.say(text) : effects.tell;
  const before = earlierAnswers(say, { questions, draft, own: given });
  if (!asker) {
    const { answers, faults, refused: wrong } = await answersOf(questions, before, null);
    if (faults.length === 0) return answers;
    // A line of one answer is typed again as fast as it is kept: no folder is begun for it.
    const lists = questions.filter(({ key, many }) => many && (answers[key]?.length || wrong[key]?.length));
    if (lists.length > 0) await keeper.keep({ answers, refused: wrong });
    refused(effects, ...faults, ...mendingTold(keeper));
    return null;
  }
  try {
    return (await answersOf(questions, before, asker, keeper.keep)).answers;
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    refused(effects, `${brokenOff}${keeper.told()}`);
    return null;
  }
}

function without(draft: Draft, key: string | null): Draft {
  if (key === null) return draft;
  const { answers, refused = {}, ...others } = draft.before;
  const [{ [key]: _, ...kept }, { [key]: __, ...wrong }] = [answers, refused];
  return { ...draft, before: { ...others, answers: kept, refused: wrong } };
}
