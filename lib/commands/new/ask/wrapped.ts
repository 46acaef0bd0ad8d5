/**
 * A text whose lines are no longer than a terminal is wide, broken between words: what follows on goes on under the line
 * that it belongs to. A word that is longer stands alone.
 */
export function wrapped(text: string, columns: number): string {
  return text
    .split('\n')
    .flatMap((line) => (line.length <= columns ? [line] : broken(line, columns)))
    .join('\n');
}

function broken(line: string, columns: number): readonly string[] {
  const [indent = ''] = /^ */.exec(line) ?? [];
  const lines: string[] = [];
  let now = indent;
  for (const word of line.trim().split(/ +/)) {
    const isFirst = now === indent;
    if (!isFirst && now.length + 1 + word.length > columns) {
      lines.push(now);
      now = `${indent}${word}`;
    } else now = isFirst ? `${now}${word}` : `${now} ${word}`;
  }
  return [...lines, now];
}
