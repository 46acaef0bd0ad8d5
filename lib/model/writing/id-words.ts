import { plainLetters } from './plain-letters.ts';

/** A title in the letters of an id: `Left door, front` is `left-door-front`. Empty where it has no letter or digit. */
export function idWords(title: string): string {
  return plainLetters(title.toLowerCase())
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/['’]/g, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
}
