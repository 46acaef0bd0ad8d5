import type { Effects } from '../effects.ts';
import { answersOf } from './ask/answers-of.ts';
import { type Answers, type Asker, Interrupted, type Question } from './ask/question.ts';
import { openDraft } from './draft.ts';
import { answerKeeper, earlierAnswers } from './kept-answers.ts';
import { refused } from './refused.ts';

/** What a draft of answers is called, until when it is kept, and what is said where they are broken off. */
export interface AskedFor {
  readonly draft: string;
  readonly until: string;
  readonly brokenOff: string;
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
  { draft: name, until, brokenOff }: AskedFor,
): Promise<Answers | null> {
  if (!asker) {
    const { answers, faults } = await answersOf(questions, { answers: given }, null);
    if (faults.length === 0) return answers;
    refused(effects, ...faults);
    return null;
  }
  const draft = await openDraft(effects, name);
  const keeper = answerKeeper(effects, until, draft);
  try {
    const before = earlierAnswers((text) => asker.say(text), draft, given);
    return (await answersOf(questions, before, asker, keeper.keep)).answers;
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    refused(effects, `${brokenOff}${keeper.told()}`);
    return null;
  }
}
