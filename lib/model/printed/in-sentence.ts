/** Words that begin a line, as they stand within a sentence. */
export function inSentence(words: string): string {
  return `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
}
