/** Names as one phrase: `a`, `a and b`, `a, b and c`. */
export function listed(names: readonly string[], last = 'and'): string {
  const [end = 'nothing', ...before] = names.toReversed();
  return before.length === 0 ? end : `${before.reverse().join(', ')} ${last} ${end}`;
}
