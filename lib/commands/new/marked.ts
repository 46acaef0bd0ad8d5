import type { Problem } from '../../model/problem.ts';

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
      return [...[...(marks.get(at + 1) ?? [])].map((mark) => `${indent}# ${mark}`), line];
    })
    .join('\n');
}

function markWords({ message, expected, remedy }: Problem): string {
  const more = [expected && `write ${expected}`, remedy].filter((one) => one);
  return ['Still to be written', [message, ...more].join('; ')].join(': ').replace(/\s*\n\s*/g, ' ');
}
