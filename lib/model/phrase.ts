import type { LengthName } from './printed/lengths.ts';

/** A length within a phrase. Its kind tells which way it may err once it is written. */
export interface PhraseLength {
  readonly kind: LengthName;
  readonly lengthM: number;
}

/**
 * A sentence whose lengths are not written yet: in which system, and to what fraction, only those know who have the
 * job. Plain data, so that it can be kept.
 */
export type Phrase = string | readonly (string | PhraseLength)[];

/** Writes a length of a kind. */
export type LengthWriter = (kind: LengthName, lengthM: number) => string;

/** A length for a phrase. */
export function length(kind: LengthName, lengthM: number): PhraseLength {
  return { kind, lengthM };
}

/** A template for a phrase: ``phrase`${id} reaches ${length('overlap', byM)} out of the board` ``. */
export function phrase(
  texts: TemplateStringsArray,
  ...between: readonly (Phrase | PhraseLength | number)[]
): Phrase {
  return texts.flatMap((text, at) => {
    const one = between[at] ?? '';
    return [text, ...(Array.isArray(one) ? one : [typeof one === 'number' ? String(one) : one])];
  });
}

/** A phrase with its lengths written. */
export function worded(told: Phrase, write: LengthWriter): string {
  if (typeof told === 'string') return told;
  return told.map((one) => (typeof one === 'string' ? one : write(one.kind, one.lengthM))).join('');
}
