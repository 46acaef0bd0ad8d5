/** What a message calls the value at a list of keys: its own key, or `entry 3 of devices` in a list. */
export function subject(keys: readonly (string | number)[]): string {
  const last = keys.at(-1);
  if (last === undefined) return 'the file';
  return typeof last === 'number' ? `entry ${last + 1} of ${subject(keys.slice(0, -1))}` : last;
}

/** What is said of the value of a name: `width is a bare number`, but `width: "12" has no unit`. */
export function sentence(name: string, words: string): string {
  return /^[a-z]/.test(words) ? `${name} ${words}` : `${name}: ${words}`;
}
