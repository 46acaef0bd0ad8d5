import type { Effects } from '../effects.ts';
import type { Beforehand } from './ask/answers-of.ts';
import { withEarlier } from './ask/earlier-rows.ts';
import type { Answers, Question } from './ask/question.ts';
import type { Draft } from './draft.ts';

/** A try of which an earlier one may have left answers. */
export interface Tried {
  readonly questions: readonly Question[];
  readonly draft: Draft;
  readonly own: Answers;
}

/** Answers that an earlier try left, with those of the command in their place. */
export function earlierAnswers(say: (text: string) => void, { questions, draft, own }: Tried): Beforehand {
  const { answers, refused = {} } = draft.before;
  const count = new Set([...Object.keys(answers), ...Object.keys(refused)]).size;
  if (count > 0)
    say(`answers of an earlier try are taken, ${count} in all; without ${draft.path} all is asked anew`);
  return withEarlier(questions, draft.before, own);
}

/** What is said where a command is refused of which the draft keeps all. */
export function mendingTold(keeper: AnswerKeeper): readonly string[] {
  if (keeper.told() === '') return ['nothing is written'];
  return [
    `nothing is written yet${keeper.told()} with what is mended: give a refused row alone, the others are kept; an empty one leaves it out`,
  ];
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
      const told = [...Object.entries(answers.answers), ...Object.entries(answers.refused ?? {})];
      const something = told.some(([key, lines]) => key !== 'id' && lines.length > 0);
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
