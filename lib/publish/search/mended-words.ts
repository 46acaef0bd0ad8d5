import { type KnownWords, nearestWord, splitWord } from './near-words.ts';
import { type AskedWord, joinedWord, normalWord } from './search-words.ts';

/** A word that is looked for, and what was typed where that is another. */
export interface LookedFor {
  readonly words: readonly string[];
  readonly typed: string;
  /** True where what was typed is on no page, and another word is looked for in its place. */
  readonly isMended: boolean;
  readonly or?: readonly string[];
}

/**
 * The words of a question as the index has them: what no page has is put right where it is plain what was meant, a word
 * typed as two, two typed as one, a slip. What begins a known word stays, since it is found by that.
 */
export function mendedWords(asked: readonly AskedWord[], known: KnownWords): LookedFor[] {
  const out: LookedFor[] = [];
  for (let at = 0; at < asked.length; at += 1) {
    const one = asked[at];
    const next = asked[at + 1];
    if (!one) continue;
    const joined = next && one.touchesNext ? joinedWord(one.typed, next.typed) : null;
    if (next && joined !== null && known.has(joined) && !(isKnown(one, known) && isKnown(next, known))) {
      out.push({ words: [joined], typed: `${one.typed} ${next.typed}`, isMended: false });
      at += 1;
    } else out.push(mended(one, known));
  }
  return out;
}

function isKnown({ word }: AskedWord, known: KnownWords): boolean {
  return known.has(word);
}

function mended(asked: AskedWord, known: KnownWords): LookedFor {
  const { word, typed, isPlain, or } = asked;
  const asTyped = { words: [word], typed, isMended: false, ...(or && { or }) };
  if (known.has(word) || !isPlain || begins(word, known)) return asTyped;
  const split = splitWord(typed, known, normalWord);
  if (split) return { words: split, typed, isMended: false };
  const near = nearestWord(word, known);
  return near === null ? asTyped : { words: [near], typed, isMended: true };
}

/** True for the beginning of a known word, as it is while a reader still types. */
function begins(word: string, known: KnownWords): boolean {
  return word.length >= 3 && [...known.keys()].some((one) => one.startsWith(word));
}
