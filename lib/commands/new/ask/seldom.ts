import { remedyFor } from '../../../read/report.ts';
import { type Answers, lineOf, type Question } from './question.ts';

/** Under this key stand the seldom questions that a person named. */
export const namedKey = 'named';

/** Fewer of them are asked one by one: to ask for their names would be as long. */
const leastAtOnce = 2;

/**
 * Questions with those that seldom are there to answer shown together, before the first of them: each with what holds
 * without it. Enter takes that for all; whoever names some is asked these in their turn.
 */
export function withSeldomTogether(questions: readonly Question[]): readonly Question[] {
  const seldom = questions.filter((question) => question.seldom !== undefined);
  const [first] = seldom;
  if (!first || seldom.length < leastAtOnce) return questions.map(alwaysAsked);
  return questions.flatMap((question) => (question === first ? [together(seldom), question] : [question]));
}

function alwaysAsked({ seldom: _, ...question }: Question): Question {
  return question;
}

function together(seldom: readonly Question[]): Question {
  const keys = seldom.map(({ key }) => key);
  return {
    key: namedKey,
    asks: 'Which of these are there to tell? Of the others it holds what stands behind them',
    hints: () => [
      ...seldom.map(({ key, asks, seldom: holds }) => `${key}: ${asks}. Else: ${holds}`),
      `Such as: ${keys.slice(0, 2).join(' ')}. Enter: none of them.`,
    ],
    many: false,
    fallback: () => '',
    fault: (answer) => {
      const strange = wordsOf(answer).find((word) => !keys.includes(word));
      return strange === undefined ? null : `"${strange}" is not one of them; ${remedyFor(strange, keys)}`;
    },
  };
}

/** True for a seldom question that nobody named: what holds without it is taken. */
export function isPassedOver({ key, seldom }: Pick<Question, 'key' | 'seldom'>, answers: Answers): boolean {
  return seldom !== undefined && !wordsOf(lineOf(answers, namedKey)).includes(key);
}

/** Answers that name one more of the seldom questions; as they are for another question. */
export function naming(question: Question, answers: Answers): Answers {
  if (!isPassedOver(question, answers)) return answers;
  const { key } = question;
  return { ...answers, [namedKey]: [[...wordsOf(lineOf(answers, namedKey)), key].join(' ')] };
}

function wordsOf(line: string): readonly string[] {
  return line.split(/[\s,]+/).filter((word) => word !== '');
}
