import { type Finding, type Level, levelSchema } from '../model/finding.ts';

/** How grave a level is: 0 for the gravest. */
export const rank = (level: Level): number => levelSchema.options.indexOf(level);

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Order of findings: gravest first, then by place in the files, by rule, by subject; the rest decides between near doubles. */
export function compare(a: Finding, b: Finding): number {
  return (
    rank(a.level) - rank(b.level) ||
    compareText(a.where.file, b.where.file) ||
    a.where.line - b.where.line ||
    a.where.column - b.where.column ||
    compareText(a.rule, b.rule) ||
    compareText(a.related.join(' '), b.related.join(' ')) ||
    compareText(a.message, b.message)
  );
}
