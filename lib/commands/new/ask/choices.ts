import { z } from 'zod';
import type { AskedColumn } from '../../../model/survey/asked-table.ts';
import { plainSchemas } from '../../../read/schema/schema-walk.ts';
import type { Choice } from './question.ts';

/** Words that are chosen from, as they are. */
export function choicesOfWords(words: readonly string[]): readonly Choice[] {
  return words.map((word) => ({ value: word, says: word }));
}

/** What a column takes, where that is a closed set of words; null where it is not. */
export function choicesOf({ field, optional }: AskedColumn): readonly Choice[] | null {
  const plain = plainSchemas(field);
  const words = plain.flatMap((one) => (one instanceof z.core.$ZodEnum ? [...one._zod.values] : []));
  if (words.length === 0 || plain.length > 1) return null;
  const choices = choicesOfWords(words.map(String));
  return optional === true ? [{ value: '', says: 'not known' }, ...choices] : choices;
}
