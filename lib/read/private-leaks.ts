import type { WrittenJob } from '../model/content/job.ts';
import { commonWords } from './private/common-words.ts';
import { freeTexts } from './private/free-texts.ts';
import { holdNumber, holdWords, wordsOf } from './private/words.ts';
import type { Report } from './report.ts';

/**
 * Looks for private values of the customer in every free text of a job: it is printed, indexed or stands in an address.
 * The message does not repeat the value. One word of a name is no more than a finding: it may mean something else.
 */
export function privateLeaks(job: WrittenJob, report: Report): void {
  const secrets = Object.entries(job.customer).flatMap(([field, value]) =>
    value === undefined ? [] : secretsOf(field, value.reveal()),
  );
  if (secrets.length === 0) return;
  for (const { path, text } of freeTexts(job)) {
    const words = wordsOf(text);
    const leak = secrets.find((secret) => secret.isIn(text, words));
    if (leak)
      report.at(
        path,
        `this text holds the customer's ${leak.field}, which is private`,
        'take it out: it would be printed and indexed',
      );
  }
}

interface Secret {
  readonly field: string;
  readonly isIn: (text: string, words: readonly string[]) => boolean;
}

/** The whole value; a name of several words in either order. */
function secretsOf(field: string, value: string): Secret[] {
  const words = wordsOf(value);
  if (words.join('').length < 3 || (words.length === 1 && commonWords.has(words.join('')))) return [];
  const isName = field === 'name';
  return [
    {
      field,
      isIn: (text, own) =>
        holdWords(own, words) ||
        (isName && holdWords(own, words.toReversed())) ||
        (field === 'contact' && holdNumber(text, value)),
    },
  ];
}

/** Words of a name that are looked for by themselves: long enough, and no word that a text holds anyway. */
export function lookedForIn(name: string, known: ReadonlySet<string>): string[] {
  return wordsOf(name).filter((word) => word.length >= 4 && !commonWords.has(word) && !known.has(word));
}
