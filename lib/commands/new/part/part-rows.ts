import type { KindName } from '../../../model/kinds/index.ts';
import { type Answers, lineOf, linesOf } from '../ask/question.ts';
import { type Row, rowOf } from '../ask/rows.ts';
import { componentSet } from './component-set.ts';
import { partTables } from './part-tables.ts';

/** Why what was answered before a table makes it needless, as the end of a sentence about it; null where nothing does. */
export function needlessFor(key: string, answers: Answers): string | null {
  const band = { box: 'subwoofer', set: componentSet }[key];
  if (band === undefined || lineOf(answers, 'facts').startsWith(band)) return null;
  return `belongs to a speaker of the band ${band}: write that first in --facts, or leave it out`;
}

/** False for a table that what was answered before it makes needless. */
export function isAsked(key: string, answers: Answers): boolean {
  return needlessFor(key, answers) === null;
}

/** The rows of one table, as they were answered. */
export function partRows(kind: KindName, key: string, answers: Answers): readonly Row[] {
  const table = partTables[kind].find((one) => one.key === key);
  return table ? linesOf(answers, key).map((line) => rowOf(table.columns, line)) : [];
}
