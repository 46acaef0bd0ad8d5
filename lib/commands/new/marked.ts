import type { Problem } from '../../model/problem.ts';

/** A line of a comment is no longer, where its words allow it. */
const mostColumns = 110;

/**
 * The text of a file with what the reader finds wrong in it as comments, each above the line that it is about: what is
 * missing is told where it belongs. The text itself stays as it is.
 */
export function markedText(text: string, problems: readonly Problem[]): string {
  const marks = new Map<number, Set<string>>();
  for (const problem of problems) {
    const told = marks.get(problem.where.line) ?? new Set();
    marks.set(problem.where.line, told.add(markWords(problem)));
  }
  return text
    .split('\n')
    .flatMap((line, at) => {
      const indent = /^ */.exec(line)?.[0] ?? '';
      return [...[...(marks.get(at + 1) ?? [])].flatMap((mark) => commentLines(mark, indent)), line];
    })
    .join('\n');
}

function markWords({ message, expected, remedy }: Problem): string {
  const more = [expected === undefined ? [] : [`expected: ${expected}`], remedy ?? []].flat();
  return `Still to be written: ${[message, ...more].join('; ')}`;
}

function commentLines(words: string, indent: string): readonly string[] {
  const lines: string[] = [];
  let line = `${indent}#`;
  for (const word of words.split(/\s+/)) {
    if (line.length + 1 + word.length > mostColumns && line !== `${indent}#`) {
      lines.push(line);
      line = `${indent}#  `;
    }
    line += ` ${word}`;
  }
  return [...lines, line];
}
