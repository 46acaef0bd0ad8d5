import { plainLetters } from '../../model/writing/plain-letters.ts';

/**
 * The words of a text as they are compared: in small letters of one width, without accents and signs that no eye sees,
 * `Mueller` as `Müller`.
 */
export function wordsOf(text: string): string[] {
  const bare = text
    .normalize('NFKD')
    .replace(/[\p{M}\p{Cf}]/gu, '')
    .toLowerCase();
  const plain = plainLetters(bare).replace(/([aou])e/g, '$1');
  return plain.match(/[\p{L}\p{N}]+/gu) ?? [];
}

/** True where words stand one after the other in a text, in whatever way they are spaced or joined. */
export function holdWords(text: readonly string[], words: readonly string[]): boolean {
  const joined = words.join('');
  return text.some((word, start) => {
    let read = '';
    for (let next = start; read.length < joined.length && next < text.length; next += 1) read += text[next];
    return read === joined || (joined.length >= leastJoined && word.includes(joined));
  });
}

/** So long is what is found within a word too: shorter ones stand in many. */
const leastJoined = 6;

/** Digits that a number to call ends with, after what a country or a trunk line puts before them. */
const ownDigits = 7;

/** True where a number to call stands in a text, with other marks between its digits or another prefix. */
export function holdNumber(text: string, number: string): boolean {
  const own = number.normalize('NFKD').replace(/\D/g, '').slice(-ownDigits);
  const runs = text.normalize('NFKD').match(/\d(?:[\s()./-]*\d)+/g) ?? [];
  return own.length === ownDigits && runs.some((run) => run.replace(/\D/g, '').includes(own));
}
