import { fileId } from '../../model/fields.ts';
import { idWords } from '../../model/writing/id-words.ts';

/** An id made of a title: `Left door, front` is `left-door-front`. Null where a title has nothing to make one of. */
export function idOf(title: string): string | null {
  const read = fileId.safeParse(idWords(title));
  return read.success ? read.data : null;
}
