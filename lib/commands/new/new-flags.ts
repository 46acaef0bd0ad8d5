import { isKindName, kinds } from '../../model/kinds/index.ts';
import type { AskedTable } from '../../model/survey/asked-table.ts';
import { walk } from '../../model/survey/order-of-questions.ts';
import type { Answers } from './ask/question.ts';
import { tableHints } from './ask/table-question.ts';
import { jobTables } from './job/job-tables.ts';
import { differsKey } from './part/like/like-file.ts';
import { partTables } from './part/part-tables.ts';
import { shelfTables } from './shelf/shelf-tables.ts';
import { shopTables } from './shop-tables.ts';

/** The tables that each thing is asked by; of a part by its kind, of all kinds where none is told. */
const tablesOf = {
  shop: () => [...shopTables, ...shelfTables],
  vehicle: () => walk.flatMap(({ tables }) => tables),
  part: ({ kind = [] }: Answers) => {
    const [named] = kind;
    return named !== undefined && isKindName(named) ? partTables[named] : Object.values(partTables).flat();
  },
  shelf: () => shelfTables,
  job: () => jobTables,
} as const satisfies Readonly<Record<string, (answers: Answers) => readonly AskedTable[]>>;

/** What `rackleaf new` makes. */
export type NewWhat = keyof typeof tablesOf;

/** Flags that no question is asked for. */
const beside: Readonly<Record<NewWhat, readonly string[]>> = {
  shop: ['list'],
  vehicle: ['like'],
  part: ['kind', 'like'],
  shelf: ['list'],
  job: ['like'],
};

/** The flags of one thing: each question has one of its own name. */
export function flagsOf(what: NewWhat, answers: Answers): readonly string[] {
  if (what === 'part' && answers.like) return ['like', 'kind', 'title', differsKey, 'control'];
  return [...tablesOf[what](answers).map(({ key }) => key), ...beside[what]];
}

/** Every flag of `rackleaf new`. */
export function newFlags(): readonly string[] {
  const all = (['shop', 'vehicle', 'part', 'shelf', 'job'] as const).flatMap((what) => flagsOf(what, {}));
  return [...new Set([...all, differsKey, 'id'])];
}

/** The flags of one thing, each with what it asks and how its answer is written. */
export function flagsText(what: NewWhat, answers: Answers): string {
  if (what === 'part' && !answers.kind)
    return [`--kind  ${Object.keys(kinds).join(', ')}`, likeFlag].join('\n');
  return [...(what === 'part' ? [likeFlag] : []), ...askedFlags(what, answers)].join('\n');
}

/** What spares the second of two that are alike in most rows; only differences are told of it. */
const likeFlag = `--like PART  in place of the flags below, where a part of the shop is like it in most rows: what differs is told by --${differsKey}; \`rackleaf new part --like PART --flags\` lists what may`;

function askedFlags(what: NewWhat, answers: Answers): readonly string[] {
  return tablesOf[what](answers).map((table) =>
    [
      `--${table.key}  ${table.asks}`,
      ...tableHints(table, table.columns).map((line) => `    ${line}`),
      ...(table.rows > 1 ? ['    May be given several times.'] : []),
    ].join('\n'),
  );
}
