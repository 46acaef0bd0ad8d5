import type { KindName } from '../../../model/kinds/index.ts';
import type { Answers } from '../ask/question.ts';
import type { Row } from '../ask/rows.ts';
import { isAsked, partRows } from './part-rows.ts';
import { partTables } from './part-tables.ts';

/** What was not told of a part, though its kind can hold it. */
export function leftOut(kind: KindName, answers: Answers): readonly string[] {
  return partTables[kind].flatMap((table) => {
    // A title that is not told is made.
    if (table.key === 'title' || !isAsked(table.key, answers)) return [];
    const rows = partRows(kind, table.key, answers);
    const [row] = rows;
    if (!row) return [`${table.key}: ${table.asks}`];
    if (table.rows > 1) return rows.flatMap((one) => openOf(table.key, one));
    const empty = table.columns.filter(
      (one) => row.cells[one.key] === undefined && !follows.has(one.key) && !isNeedless(kind, one.key, row),
    );
    return empty.length === 0 ? [] : [`${table.key}: ${empty.map(({ title }) => title).join(', ')}`];
  });
}

/** What `?` left open in one row of several. */
function openOf(key: string, { cells, open }: Row): string[] {
  const name = cells.names ?? cells.name;
  const row = name === undefined ? key : `${key} ${String(name)}`;
  return open.length === 0 ? [] : [`${row}: ${open.join(', ')}`];
}

/** True for what a part of this kind has not, by what was told of it: a sealed box has no port that could be tuned, and a post no tab. */
function isNeedless(kind: KindName, key: string, { cells }: Row): boolean {
  if (kind === 'speaker' && key === 'tabs') return cells.joint !== 'blade-tab';
  return kind === 'enclosure' && key === 'tuning' && cells.loading === 'sealed';
}

/** Columns that say nothing more where they are left empty. */
const follows: ReadonlySet<string> = new Set(['left', 'right', 'top', 'bottom', 'ends']);
