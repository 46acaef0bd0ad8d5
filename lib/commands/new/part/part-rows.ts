import type { KindName } from '../../../model/kinds/index.ts';
import { type Answers, lineOf, linesOf } from '../ask/question.ts';
import { type Row, rowOf } from '../ask/rows.ts';
import { componentSet } from './component-set.ts';
import { partTables } from './part-tables.ts';

/** False for a table that what was answered before it makes needless. */
export function isAsked(key: string, answers: Answers): boolean {
  const band = { box: 'subwoofer', set: componentSet }[key];
  return band === undefined || lineOf(answers, 'facts').startsWith(band);
}

/** The rows of one table, as they were answered. */
export function partRows(kind: KindName, key: string, answers: Answers): readonly Row[] {
  const table = partTables[kind].find((one) => one.key === key);
  return table ? linesOf(answers, key).map((line) => rowOf(table.columns, line)) : [];
}
