import type { Effects } from '../effects.ts';
import type { Beforehand } from './ask/answers-of.ts';
import type { Answers } from './ask/question.ts';
import type { Draft } from './draft.ts';

/** Answers that an earlier try left, and those of the command, which go before. */
export function earlierAnswers(say: (text: string) => void, draft: Draft, own: Answers): Beforehand {
  const { answers, open } = draft.before;
  const count = Object.keys(answers).length;
  if (count > 0)
    say(`answers of an earlier try are taken, ${count} in all; without ${draft.path} all is asked anew`);
  return { answers: { ...answers, ...own }, ...(open !== undefined && !(open in own) && { open }) };
}

/** Keeps the answers of one try as they come. */
export interface AnswerKeeper {
  keep(answers: Beforehand): Promise<void>;
  /** What is said of them where the file is not written. */
  told(): string;
  discard(): Promise<void>;
}

/** Keeps them in a draft. `until` is what must be done before the person may break off, where this disk takes none. */
export function answerKeeper(effects: Effects, until: string, draft: Draft): AnswerKeeper {
  let state: 'none' | 'kept' | 'not-kept' = 'none';
  return {
    keep: async (answers) => {
      const something = Object.entries(answers.answers).some(
        ([key, lines]) => key !== 'id' && lines.length > 0,
      );
      if (!something) return;
      const isFirst = state !== 'not-kept';
      state = (await draft.save(answers)) ? 'kept' : 'not-kept';
      if (state === 'not-kept' && isFirst)
        effects.tell(`the answers can't be kept in ${draft.path}: do not break off before ${until}`);
    },
    told: () => (state === 'kept' ? `; ${draft.path} keeps the answers, and the same command goes on` : ''),
    discard: draft.discard,
  };
}
