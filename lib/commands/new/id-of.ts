import { fileId } from '../../model/fields.ts';
import { plainLetters } from '../../read/names/plain-letters.ts';

/** An id made of a title: `Left door, front` is `left-door-front`. Null where a title has nothing to make one of. */
export function idOf(title: string): string | null {
  const words = plainLetters(title.toLowerCase())
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/['’]/g, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  const read = fileId.safeParse(words);
  return read.success ? read.data : null;
}
