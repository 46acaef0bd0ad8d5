/** A word of the files with its article, by its first letter: `an amplifier`, `a source-unit`. */
export function withArticle(word: string): string {
  return `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;
}
