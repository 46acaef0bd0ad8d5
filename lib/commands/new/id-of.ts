import { fileId } from '../../model/fields.ts';

/** Letters that are written by others where an id is made of them, beside those that only lose their accent. */
const letters: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  ø: 'o',
  œ: 'oe',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
};

/** An id made of a title: `Left door, front` is `left-door-front`. Null where a title has nothing to make one of. */
export function idOf(title: string): string | null {
  const words = title
    .toLowerCase()
    .replace(/[ßæøœłđðþı]/g, (letter) => letters[letter] ?? '')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/['’]/g, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  const read = fileId.safeParse(words);
  return read.success ? read.data : null;
}
