/** Letters that are no other letter with an accent, by those that they are written with instead. */
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

/** Small letters in those of the plain alphabet, beside letters that only lose their accent: `straße` as `strasse`. */
export function plainLetters(text: string): string {
  return text.replace(/[ßæøœłđðþı]/g, (letter) => letters[letter] ?? '');
}
