/**
 * The words of a command line, each value that begins with one hyphen (a terminal named `-`, a level of -5 dB) joined to
 * the flag that takes it: the parser would read it as a flag. No flag of ours has a single hyphen.
 */
export function joinedValues(words: readonly string[], takesValue: (flag: string) => boolean): string[] {
  const joined: string[] = [];
  for (const word of words) {
    const [, flag] = /^--([^=]+)$/.exec(joined.at(-1) ?? '') ?? [];
    if (flag !== undefined && takesValue(flag) && /^-(?!-)/.test(word))
      joined.push(`${joined.pop()}=${word}`);
    else joined.push(word);
  }
  return joined;
}
