/** Where a text shows that its file is in another encoding than UTF-8, and what is told of it. */
export interface EncodingFault {
  readonly offset: number;
  readonly message: string;
}

/** What takes the place of bytes that are no UTF-8 when a file is read. */
const replaced = '\uFFFD';

/**
 * What is wrong with the encoding of a file, from its text as UTF-8 reads it: two bytes a letter leave a mark that is
 * none, or a null beside each letter; one byte a letter (Latin-1, Windows-1252) leaves one at its first letter with an
 * accent. Null where it is UTF-8. The whole file is told once, since every line of it is in that encoding.
 */
export function encodingFault(text: string): EncodingFault | null {
  if (text.startsWith(replaced + replaced) || /^(?:[^\0]\0|\0[^\0]){2}/.test(text))
    return {
      offset: 0,
      message: 'the file is saved in UTF-16: save it again in UTF-8, without changing anything else',
    };
  const offset = text.indexOf(replaced);
  if (offset < 0) return null;
  return {
    offset,
    message:
      'a letter here is no UTF-8: the file is saved in Latin-1 or Windows-1252, it seems; save it again in UTF-8, and look at its accents, degree and ohm signs',
  };
}
