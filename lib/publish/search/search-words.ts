import { gap, takeMeasures } from './measures.ts';
import { idleWords, numberWords, tradePhrases, tradeWords } from './trade-words.ts';

/*
 * Words as the index has them and as a question is put, by the same rules: a search library knows words alone, and of
 * `1/0` it would make a ten.
 */

/** A word that is asked for. */
export interface AskedWord {
  /** As it was typed. */
  readonly typed: string;
  /** As the index has it. */
  readonly word: string;
  /** True for what is made of letters alone: it may be a slip of what the index has. */
  readonly isPlain: boolean;
  /** What may be meant instead. */
  readonly or?: readonly string[];
  /** True where the next word was typed right behind it, with a space or a hyphen between. */
  readonly touchesNext: boolean;
}

/** Every word by which a text is found, each once. */
export function indexWords(text: string): string[] {
  const { found, rest } = takeMeasures(plainText(text));
  const measured = found.flatMap(({ word, also, or = [] }) => [word, ...also, ...or]);
  const spoken = chunksOf(rest).flatMap((chunk) => [
    ...chunk.map(normalWord),
    ...joinsOf(chunk).map(singular),
  ]);
  return [...new Set([...measured.map(normalWord), ...spoken])];
}

/** The words of a question, in the order in which they were typed; measures first. Idle words only where there are no others. */
export function askedWords(text: string): AskedWord[] {
  const { found, rest } = takeMeasures(plainText(text));
  const measured = found.map(
    ({ word, typed, or }): AskedWord => ({
      typed,
      word: normalWord(word),
      isPlain: false,
      touchesNext: false,
      ...(or && { or: or.map(normalWord) }),
    }),
  );
  const spoken = rest.split(gap.trim()).flatMap((part): AskedWord[] => {
    const words = part.split(/[^a-z0-9]+/).filter((word) => word !== '');
    return words.map((typed, index) => ({
      typed,
      word: normalWord(typed),
      isPlain: /^[a-z]+$/.test(typed),
      touchesNext: index + 1 < words.length,
    }));
  });
  const all = [...measured, ...spoken];
  const telling = all.filter(({ typed }) => !idleWords.has(typed));
  return telling.length > 0 ? telling : all;
}

/** The words by which something that was typed as one or two is known: `subwoofers` and `sub woofers` alike. */
export function joinedWord(before: string, behind: string): string {
  return normalWord(`${before}${behind}`);
}

/** One word in its plain form: singular, by the name that stands for its like, numbers in digits. */
export function normalWord(word: string): string {
  const plain = numberWords[word] ?? word;
  const single = singular(plain);
  return tradeWords[plain] ?? tradeWords[single] ?? single;
}

/** A word without the ending of a plural, by the common rules of English; what is short or no plural stays. */
export function singular(word: string): string {
  if (word.length < 4 || /\d/.test(word)) return word;
  if (/[^aeiou]ies$/.test(word)) return `${word.slice(0, -3)}y`;
  if (/(?:x|ch|sh|ss|z)es$/.test(word)) return word.slice(0, -2);
  return /[^sui]s$/.test(word) ? word.slice(0, -1) : word;
}

/** A text in small letters, without accents, signs in words. */
function plainText(text: string): string {
  const plain = text
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (sign) => ` ${sign.normalize('NFKD').replace('\u2044', '/')}`)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('\u2044', '/')
    .replace(/[\u2032\u2019]/g, "'")
    .replace(/[\u2033\u201d]/g, '"')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replaceAll('\u03c9', ' ohm ')
    .replace(/(\d) ?[x\u00d7] ?(?=\d)/g, `$1${gap}`)
    .replace(/[a-z]+/g, (word) => numberWords[word] ?? word);
  return tradePhrases.reduce((said, [pattern, stands]) => said.replace(pattern, stands), plain);
}

/** The words of a text, those together that hyphens or points join. */
function chunksOf(text: string): string[][] {
  return text
    .split(/[^a-z0-9.-]+/)
    .map((chunk) => chunk.split(/[.-]+/).filter((word) => word !== ''))
    .filter((chunk) => chunk.length > 0);
}

/** What is written with hyphens is found without them: each two neighbours as one word, and all of them. */
function joinsOf(chunk: readonly string[]): string[] {
  if (chunk.length < 2) return [];
  const pairs = chunk.slice(1).map((word, index) => `${chunk[index]}${word}`);
  return chunk.length === 2 ? pairs : [...pairs, chunk.join('')];
}
